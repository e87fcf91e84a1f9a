import { Link } from '@tanstack/react-router';
import type { SessionDayView } from '@twelvemonth/exchange';
import { Note } from '../paper/Note.tsx';
import { longDay } from '../words/dates.ts';
import { InUnitWords } from '../words/InUnitWords.tsx';

/** What is known already to go wrong, today and next time: it comes first. */
export function KnownTrouble({ data }: { data: SessionDayView }) {
  const { trouble, next } = data;
  const nothing = trouble.length === 0 && (next === undefined || next.trouble.length === 0);
  if (nothing) return <Note>Everybody on this list and the next one is ready, as far as is known.</Note>;
  return (
    <>
      {trouble.length > 0 && <List title="Not ready for this list" people={trouble} />}
      {next !== undefined && next.trouble.length > 0 && (
        <List title={`Not ready for the next list, ${longDay(next.on)}`} people={next.trouble} />
      )}
    </>
  );
}

const List = ({ title, people }: { title: string; people: SessionDayView['trouble'] }) => (
  <section aria-label={title} style={{ marginBottom: '1rem' }}>
    <Note tone="caution">
      <h2 style={{ marginTop: 0, fontSize: '1.12rem' }}>{title}</h2>
      <ul>
        {people.map(({ patient, name, says }) => (
          <li key={patient}>
            <Link to="/people/$patient" params={{ patient }}>
              {name}
            </Link>
            : <InUnitWords>{says}</InUnitWords>
          </li>
        ))}
      </ul>
    </Note>
  </section>
);
