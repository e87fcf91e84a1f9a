import { Link } from '@tanstack/react-router';
import type { VisitView } from '@twelvemonth/exchange';
import { Note } from '../paper/Note.tsx';
import { dotted, unbroken } from '../words/texts.ts';
import css from './Visit.module.css';

/** Two identifiers, allergies, the arm to avoid: on every screen of the visit. */
export function VisitHeader({ data }: { data: VisitView }) {
  return (
    <>
      <header className={css['who']}>
        <h1>
          <Link
            to="/people/$patient"
            params={{ patient: data.patient }}
            style={{ color: 'inherit', textDecorationColor: 'var(--rule)' }}
          >
            {data.name}
          </Link>
        </h1>
        <p>
          <strong>{dotted(`born ${data.bornInWords}`, unbroken(data.number))}</strong>
        </p>
        <p>
          {dotted(
            data.infusion?.finishedAt === undefined && (data.firstTimer ? 'first dose' : data.dose),
            data.allergies,
            data.armToAvoid !== undefined &&
              `avoid the ${data.armToAvoid} arm${data.armToAvoidBecause === undefined ? '' : ` (${data.armToAvoidBecause})`}`,
            ...data.needs,
          )}
        </p>
      </header>
      {data.nearNames.length > 0 && (
        <div style={{ marginBottom: '1rem' }}>
          <Note tone="caution">
            Also on today's list, easily mistaken: <strong>{data.nearNames.join(', ')}</strong>.
          </Note>
        </div>
      )}
    </>
  );
}
