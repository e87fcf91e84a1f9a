import { useQuery } from '@tanstack/react-query';
import { Link, useNavigate, useParams, useSearch } from '@tanstack/react-router';
import { windowBar } from '@twelvemonth/charts';
import type { PersonView } from '@twelvemonth/exchange';
import { Picture } from '../drawing/Picture.tsx';
import { Awaited } from '../paper/Awaited.tsx';
import { Page } from '../paper/Page.tsx';
import { WindowWords } from '../person/WindowWords.tsx';
import { headerWords } from '../person/header-words.ts';
import { windowBarData } from '../person/window-bar-data.ts';
import { person } from '../server/queries.ts';
import { addressOf } from '../server/paths.ts';
import { useUnitWords } from '../words/american.ts';
import { dayInWords } from '../words/dates.ts';
import { ChosenSession } from './ChosenSession.tsx';
import { GiveUpPlace } from './GiveUpPlace.tsx';
import { SessionChoice } from './SessionChoice.tsx';

export function BookingScreen() {
  const { patient } = useParams({ from: '/people/$patient/book' });
  const asked = useQuery(person(patient));
  return (
    <Awaited query={asked} what="the notes">
      {(data) => <Sheet data={data} />}
    </Awaited>
  );
}

function Sheet({ data }: { data: PersonView }) {
  const { session } = useSearch({ from: '/people/$patient/book' });
  const navigate = useNavigate({ from: '/people/$patient/book' });
  const readiness = useUnitWords()(data.readiness);
  const moving = data.place !== undefined;
  return (
    <Page
      title={`${moving ? 'Move the place of' : 'Book a place for'} ${data.name}`}
      tab={moving ? 'Move a place' : 'Book a place'}
      sub={headerWords(data)}
      acts={
        <Link to="/people/$patient" params={{ patient: data.patient }}>
          back to the notes
        </Link>
      }
    >
      {data.place !== undefined && (
        <p>
          Booked now: <strong>{dayInWords(data.place.on)}</strong>, {data.place.arriveAt}.{' '}
          <a className="screenOnly" href={addressOf('calendar', { patient: data.patient })} download>
            calendar file for them
          </a>
        </p>
      )}
      {readiness !== undefined && (
        <>
          <Picture
            draw={(width) => windowBar(windowBarData(readiness, data.place), { id: `book-${data.patient}`, width })}
          />
          <WindowWords readiness={readiness} />
        </>
      )}
      <SessionChoice person={data} chosen={session} choose={(id) => void navigate({ search: { session: id } })} />
      {session !== undefined && session !== data.place?.session && (
        <ChosenSession key={session} person={data} session={session} />
      )}
      {moving && <GiveUpPlace person={data} />}
    </Page>
  );
}
