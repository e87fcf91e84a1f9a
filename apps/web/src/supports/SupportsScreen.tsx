import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import type { SupportLineView, SupportsView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Empty } from '../paper/Empty.tsx';
import { Note } from '../paper/Note.tsx';
import { Page } from '../paper/Page.tsx';
import { supports } from '../server/queries.ts';
import { dayInWords } from '../words/dates.ts';
import { dotted, sentence, unbroken } from '../words/texts.ts';
import { BookSupportForm } from './BookSupportForm.tsx';
import { CancelSupportForm } from './CancelSupportForm.tsx';
import { NotNeededForm } from './NotNeededForm.tsx';

export function SupportsScreen() {
  const { patient } = useParams({ from: '/people/$patient/bookings' });
  const asked = useQuery(supports(patient));
  return (
    <Awaited query={asked} what="the bookings">
      {(data) => <Sheet key={data.patient} data={data} />}
    </Awaited>
  );
}

const others = ['transport', 'interpreter', 'hoist', 'wide chair'] as const;

/** Transport, interpreter, hoist and wide chair beside the place they go with. What a moved place left behind comes first. */
function Sheet({ data }: { data: SupportsView }) {
  const [more, setMore] = useState<(typeof others)[number]>();
  return (
    <Page
      title="Bookings that go with the place"
      sub={dotted(data.name, `born ${data.bornInWords}`, unbroken(data.number), data.telephone)}
      acts={
        <Link to="/people/$patient" params={{ patient: data.patient }}>
          their page
        </Link>
      }
    >
      <p>
        {data.place === undefined
          ? 'They have no place.'
          : `Their place: ${dayInWords(data.place.on)}, ${data.place.arriveAt}.`}{' '}
        {data.needs.length === 0 ? 'No needs are in the notes: ask.' : `Needs: ${data.needs.join(', ')}.`}{' '}
        <Link to="/people/$patient" params={{ patient: data.patient }} search={{ record: 'contact' }}>
          correct the needs
        </Link>
      </p>
      {data.lines.length === 0 && <Empty says="Nothing is booked, and nothing in their needs asks for it." />}
      {data.lines.map((line) => (
        <Line key={`${line.what} ${line.booking ?? line.state}`} data={data} line={line} />
      ))}
      {data.place !== undefined && (
        <section aria-label="Something else" style={{ marginTop: '1.6rem' }}>
          {more === undefined ? (
            <p style={{ display: 'flex', flexWrap: 'wrap', gap: '0.6rem', alignItems: 'center' }}>
              Something else is to be booked:
              {others.map((what) => (
                <Button key={what} onClick={() => setMore(what)}>
                  {what}
                </Button>
              ))}
            </p>
          ) : (
            <BookSupportForm data={data} what={more} moves={undefined} done={() => setMore(undefined)} />
          )}
        </section>
      )}
    </Page>
  );
}

type Doing = 'book' | 'not needed' | 'cancel';

function Line({ data, line }: { data: SupportsView; line: SupportLineView }) {
  const [doing, setDoing] = useState<Doing>();
  const { what, state, says, booking } = line;
  const offered: readonly { readonly doing: Doing; readonly says: string }[] = [
    ...(state === 'to arrange' || state === 'not needed'
      ? [{ doing: 'book', says: `The ${what} is booked` } as const]
      : []),
    ...(state === 'to arrange' ? [{ doing: 'not needed', says: 'Not needed this time' } as const] : []),
    ...(state === 'to be moved' ? [{ doing: 'book', says: 'It is moved to the new place' } as const] : []),
    ...(booking === undefined ? [] : [{ doing: 'cancel', says: 'It is cancelled' } as const]),
  ];
  const done = (): void => setDoing(undefined);
  return (
    <section aria-label={`${what}: ${state}`} style={{ marginBlock: '1.2rem' }}>
      <Note tone={state === 'booked' ? 'done' : state === 'not needed' ? 'quiet' : 'caution'}>
        <strong>{sentence(state)}.</strong> {sentence(says)}.
      </Note>
      {doing === undefined && (
        <p className="screenOnly" style={{ display: 'flex', flexWrap: 'wrap', gap: '0.6rem', marginTop: '0.6rem' }}>
          {offered.map((one) => (
            <Button key={one.doing} onClick={() => setDoing(one.doing)}>
              {one.says}
            </Button>
          ))}
        </p>
      )}
      {doing === 'book' && <BookSupportForm data={data} what={what} moves={booking} done={done} />}
      {doing === 'not needed' && <NotNeededForm data={data} what={what} done={done} />}
      {doing === 'cancel' && booking !== undefined && <CancelSupportForm data={data} booking={booking} done={done} />}
    </section>
  );
}
