import type { ReviewView } from '@twelvemonth/exchange';
import css from './Review.module.css';
import { ToEntries } from './ToEntries.tsx';

/** One part of what is known: a line each, with the entries it rests on. */
export function Gathered({
  section: { title, lines, none, source },
  patient,
}: {
  section: ReviewView['sections'][number];
  patient: string;
}) {
  return (
    <div className={css['part']}>
      <h3>{title}</h3>
      {lines.length === 0 ? (
        <p className="quiet">{none}</p>
      ) : (
        <ul>
          {lines.map(({ says, entries }) => (
            <li key={`${says} ${entries.join()}`}>
              {says} <ToEntries entries={entries} patient={patient} about={says} />
            </li>
          ))}
        </ul>
      )}
      {source !== undefined && lines.length > 0 && <p className="quiet small">{source}</p>}
    </div>
  );
}
