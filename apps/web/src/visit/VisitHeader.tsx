import { Link } from '@tanstack/react-router';
import type { VisitView } from '@twelvemonth/exchange';
import { TakeOver } from '../named-nurse/TakeOver.tsx';
import { nurseInWords } from '../named-nurse/named-nurse-words.ts';
import { Note } from '../paper/Note.tsx';
import { SupportWords } from '../supports/SupportWords.tsx';
import { dotted, sentence, unbroken } from '../words/texts.ts';
import css from './Visit.module.css';

/** The chair, two identifiers, allergies, the arm to avoid: on every screen of the visit. */
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
          <strong>
            {dotted(
              data.chair !== undefined && `chair ${data.chair}`,
              `born ${data.bornInWords}`,
              unbroken(data.number),
            )}
          </strong>
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
        {data.supports.length > 0 && (
          <div>
            <SupportWords patient={data.patient} supports={data.supports} />
          </div>
        )}
        {data.session !== undefined && data.nurses.length > 0 && (
          <div style={{ display: 'flex', gap: '0.8rem', alignItems: 'baseline' }}>
            {sentence(nurseInWords(data.nurse))}
            <TakeOver
              session={data.session}
              patient={data.patient}
              name={data.name}
              nurse={data.nurse}
              nurses={data.nurses}
            />
          </div>
        )}
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
