import { useQuery } from '@tanstack/react-query';
import { Link, useNavigate, useParams } from '@tanstack/react-router';
import type { PersonView } from '@twelvemonth/exchange';
import { Awaited } from '../../paper/Awaited.tsx';
import { Note } from '../../paper/Note.tsx';
import { Page } from '../../paper/Page.tsx';
import { person } from '../../server/queries.ts';
import { dayInWords } from '../../words/dates.ts';
import { headerWords } from '../header-words.ts';
import { ReadApartForm } from './ReadApartForm.tsx';
import { SayForm } from './SayForm.tsx';
import { SideBySide } from './SideBySide.tsx';
import { SayMayBeOne } from './SayMayBeOne.tsx';

/** Two people's notes side by side: one person or two? */
export function CompareScreen() {
  const { patient, other } = useParams({ from: '/people/$patient/compare/$other' });
  const asked = useQuery(person(patient));
  return (
    <Awaited query={asked} what="the notes">
      {(data) => <Compared data={data} other={other} />}
    </Awaited>
  );
}

function Compared({ data, other }: { data: PersonView; other: string }) {
  const navigate = useNavigate();
  const toPerson = (patient: string): void => void navigate({ to: '/people/$patient', params: { patient } });
  const alike = data.lookAlikes.find(({ patient }) => patient === other);
  const joined = data.together.find(({ patient }) => patient === other);
  return (
    <Page title="One person or two?" sub={`${data.name}: ${headerWords(data)}`}>
      {joined !== undefined && (
        <>
          <p>
            The notes of number <strong>{joined.number}</strong> ({joined.name}) are read in these since{' '}
            {dayInWords(joined.since)}: {joined.reason} ({joined.by}; {joined.agree.join(', ')} agreed).
          </p>
          <ReadApartForm data={data} other={joined} done={() => toPerson(data.patient)} />
        </>
      )}
      {joined === undefined && alike !== undefined && (
        <>
          {alike.answer === 'two' && alike.answered !== undefined && (
            <Note>
              {alike.answered.by} said on {dayInWords(alike.answered.on)} that they are two people:{' '}
              {alike.answered.reason}
            </Note>
          )}
          {(alike.answer === 'may be one' || alike.answer === 'nothing said') && (
            <Note tone="caution">
              <p>
                <strong>Possible duplicate.</strong> Until somebody says one or two, neither is ready: a dose may stand
                in one and not in the other.
              </p>
            </Note>
          )}
          <SideBySide data={data} alike={alike} />
          <SayForm key={alike.answer} data={data} alike={alike} done={toPerson} />
        </>
      )}
      {joined === undefined && alike === undefined && <Note>Nothing connects these two notes.</Note>}
      <p className="screenOnly">
        <Link to="/people/$patient" params={{ patient: data.patient }} className="finger">
          Back to {data.name}
        </Link>
      </p>
    </Page>
  );
}

/** The other notes are found first: by number, name or birth date. */
export function FindOtherScreen() {
  const { patient } = useParams({ from: '/people/$patient/compare' });
  const asked = useQuery(person(patient));
  return (
    <Awaited query={asked} what="the notes">
      {(data) => (
        <Page title="Entered twice?" sub={`${data.name}: ${headerWords(data)}`}>
          <SayMayBeOne data={data} />
        </Page>
      )}
    </Awaited>
  );
}
