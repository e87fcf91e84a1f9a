import { Link } from '@tanstack/react-router';
import type { PersonView } from '@twelvemonth/exchange';
import { Note } from '../paper/Note.tsx';
import { DenosumabClock } from './DenosumabClock.tsx';

/** What would mislead if it went unseen: people who look alike, entries that contradict each other. */
export function PersonCautions({ data }: { data: PersonView }) {
  return (
    <>
      {data.denosumab !== undefined && <DenosumabClock clock={data.denosumab} />}
      {data.lookAlikes.length > 0 && (
        <Note tone="caution">
          <p>Easily mistaken for:</p>
          <ul>
            {data.lookAlikes.map((other) => (
              <li key={other.patient}>
                <Link to="/people/$patient" params={{ patient: other.patient }}>
                  {other.name}
                </Link>{' '}
                {other.says}
              </li>
            ))}
          </ul>
        </Note>
      )}
      {data.problems.map((problem) => (
        <Note key={problem} tone="caution">
          {problem}
        </Note>
      ))}
    </>
  );
}
