import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import type { SessionDayView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { useMay } from '../frame/may.ts';
import { useUnit } from '../frame/unit.ts';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Page } from '../paper/Page.tsx';
import { Why } from '../paper/Why.tsx';
import { me, sessionDay } from '../server/queries.ts';
import { ToDaySheet } from '../sessions/ToDaySheet.tsx';
import { longDay, timeOfDay } from '../words/dates.ts';
import { counted, dotted } from '../words/texts.ts';
import { AcceptHandover } from './AcceptHandover.tsx';
import { CloseForm } from './CloseForm.tsx';
import { Competences } from './Competences.tsx';
import { KnownTrouble } from './KnownTrouble.tsx';
import { LookedAfter } from './LookedAfter.tsx';
import { NurseForToday } from './NurseForToday.tsx';
import { OpenForm } from './OpenForm.tsx';
import { SecondChecks } from './SecondChecks.tsx';

/** The day of a session: opened by two registered people, closed when everybody has an outcome, handed over to somebody. */
export function SessionDayScreen() {
  const { session } = useParams({ from: '/sessions/$session/day' });
  const asked = useQuery(sessionDay(session));
  return (
    <Awaited query={asked} what="the session">
      {(data) => <Sheet key={data.session} data={data} />}
    </Awaited>
  );
}

const stateWords: Readonly<Record<SessionDayView['state'], string>> = {
  'not opened': 'not open yet',
  open: 'open',
  'closed, handover waits': 'closed; the handover waits to be accepted',
  closed: 'closed, handover accepted',
};

function Sheet({ data }: { data: SessionDayView }) {
  const may = useMay();
  const [anew, setAnew] = useState(false);
  const isToday = data.on === data.today;
  const self = useQuery(me).data?.name;
  const [found] = useState(data.state);
  const byOther = found === 'not opened' && data.opened !== undefined && data.opened.by !== self;
  return (
    <Page
      title={`Session of ${longDay(data.on)}`}
      sub={dotted(data.unitName, stateWords[data.state], counted(data.listed, 'person', 'people'))}
      acts={
        <>
          <Link to="/sessions/$session" params={{ session: data.session }}>
            the list
          </Link>
          <Link to="/">today</Link>
        </>
      }
    >
      {data.held.length > 0 && <Held held={data.held} />}
      {data.state !== 'closed' && <KnownTrouble data={data} />}
      {byOther && may('open session') && (
        <Note tone="caution" speaks="politely">
          <strong>{data.opened?.by} has opened the session meanwhile.</strong> Nothing you ticked here is recorded: read
          what was written, and say below what differs.
        </Note>
      )}
      {data.opened !== undefined && <Opened opened={data.opened} />}
      {data.opened !== undefined && <LookedAfter data={data} />}
      <SecondChecks data={data} />
      {data.state === 'open' && (
        <p className="screenOnly" style={{ marginBlock: '0.8rem' }}>
          <ToDaySheet session={data.session} says="Print the day sheet now, for when the network fails" />
        </p>
      )}
      {data.state === 'not opened' &&
        (isToday && may('open session') ? (
          <>
            {data.staff.every(({ mayCheck }) => !mayCheck) && <NobodyYet />}
            <OpenForm data={data} done={() => setAnew(false)} />
          </>
        ) : (
          <Note>{isToday ? 'A nurse opens the session.' : 'A session is opened on its day.'}</Note>
        ))}
      {data.closed !== undefined && <Closed data={data} closed={data.closed} />}
      {isToday && data.opened !== undefined && may('open session') && (
        <p className="screenOnly">
          <Button size="big" aria-expanded={anew} onClick={() => setAnew(!anew)}>
            {data.state === 'open'
              ? 'Staff, kit or chairs have changed'
              : 'Open it again: somebody is still to be seen'}
          </Button>
        </p>
      )}
      {data.opened !== undefined && anew && <OpenForm data={data} done={() => setAnew(false)} />}
      {data.state === 'open' && !anew && may('close session') && <Closing data={data} />}
      <Competences data={data} />
      {isToday && may('addStaffForToday') && <NurseForToday data={data} />}
    </Page>
  );
}

/** Somebody went home, or the kit was used: what runs goes on, nothing new begins. */
const Held = ({ held }: { held: SessionDayView['held'] }) => (
  <Note tone="stop">
    <p>
      <strong>No medicine is started now:</strong>
    </p>
    <ul>
      {held.map((says) => (
        <li key={says}>{says}</li>
      ))}
    </ul>
    <p>What runs goes on. Put it right, then say below what has changed.</p>
  </Note>
);

/** While somebody is still expected nobody closes: the form is one tap away. */
const Closing = ({ data }: { data: SessionDayView }) =>
  data.missing.some(({ comesAt }) => comesAt !== undefined) ? (
    <div style={{ marginTop: '1.6rem' }}>
      <Why word="close the session" about="and see what stands in the way">
        <CloseForm data={data} />
      </Why>
    </div>
  ) : (
    <CloseForm data={data} />
  );

/** The first session of a unit: what the form could not say by itself. */
const NobodyYet = () => (
  <Note tone="caution">
    The notes do not say yet of anybody that they may give and check medicines into a vein. The nurse in charge or the
    service lead writes it below, under <strong>competences of the staff</strong>, nobody of themselves; then the
    session can be opened.
  </Note>
);

function Opened({ opened }: { opened: NonNullable<SessionDayView['opened']> }) {
  const { unit } = useUnit();
  return (
    <section aria-labelledby="opened">
      <h2 id="opened">Opened</h2>
      <p>
        {opened.first === undefined
          ? `${timeOfDay(opened.at, unit?.zone)} by ${opened.by}`
          : `${timeOfDay(opened.first.at, unit?.zone)} by ${opened.first.by}; as it is since ${timeOfDay(opened.at, unit?.zone)}, by ${opened.by}`}
        . Here: {opened.present.map(({ name, role }) => `${name} (${role})`).join(', ')}.
      </p>
      <p>
        Second checkers: <strong>{opened.secondCheckers.map(({ name }) => name).join(', ')}</strong>. Emergency kit:{' '}
        {opened.kit}. {counted(opened.chairs, 'chair')}.
      </p>
      <p>
        {opened.counts.length === 0
          ? 'No packs were counted.'
          : `Counted: ${opened.counts.map(countInWords).join(', ')}.`}
      </p>
    </section>
  );
}

/** A count that is not what the sum said is seen by everybody, not only under Stock. */
const countInWords = ({ batch, packs, bySum }: NonNullable<SessionDayView['opened']>['counts'][number]): string =>
  `${counted(packs, 'pack')} of ${batch}${bySum === undefined ? '' : ` (▲ ${bySum} by the sum: look under Stock)`}`;

function Closed({ data, closed }: { data: SessionDayView; closed: NonNullable<SessionDayView['closed']> }) {
  const { unit } = useUnit();
  return (
    <section aria-labelledby="closed">
      <h2 id="closed">Closed</h2>
      <p>
        {timeOfDay(closed.at, unit?.zone)} by {closed.by}.{' '}
        {closed.counts
          .map(
            ({ batch, packs, note }) =>
              `${counted(packs, 'pack')} of ${batch} left${note === undefined ? '' : ` (${note})`}`,
          )
          .join(', ')}
      </p>
      <h3>Handed over to {closed.to}</h3>
      <p style={{ whiteSpace: 'pre-wrap' }}>{closed.handover}</p>
      {data.accepted === undefined ? (
        <AcceptHandover data={data} closed={closed} />
      ) : (
        <Note tone="done">
          Accepted by {data.accepted.by}, {timeOfDay(data.accepted.at, unit?.zone)}
          {data.accepted.note === undefined ? '' : `: ${data.accepted.note}`}
        </Note>
      )}
    </section>
  );
}
