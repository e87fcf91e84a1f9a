import { Link } from '@tanstack/react-router';
import { type Sheet, newestOfEach, riskText, whyNotUsable } from '@twelvemonth/counselling';
import type { DecidingView } from '@twelvemonth/exchange';
import { Note } from '../paper/Note.tsx';
import { Why } from '../paper/Why.tsx';
import css from './Deciding.module.css';
import { EntryForm } from './EntryForm.tsx';
import { baselines, personFacts } from './facts.ts';

/** The risk copied from the unit's own instrument, with its date; without it no number is told. */
export function YourRisk({ data, sheet }: { data: DecidingView; sheet: Sheet }) {
  const person = personFacts(data);
  const newest = newestOfEach(baselines(data));
  return (
    <section aria-labelledby="risk">
      <h2 id="risk">Your risk of a break</h2>
      {newest.length > 0 && (
        <ul className={css['plain']}>
          {newest.map((one) => {
            const old = whyNotUsable(one, person);
            return (
              <li key={one.of}>
                {riskText(one)}
                {old !== undefined && <strong> {old}</strong>}
              </li>
            );
          })}
        </ul>
      )}
      {sheet.noNumbers.length > 0 && (
        <Note tone="caution">
          {sheet.noNumbers.map((says) => (
            <p key={says}>{says}</p>
          ))}
        </Note>
      )}
      <p className="screenOnly small quiet">
        It is copied from the instrument your unit uses; it is never worked out here.{' '}
        <Link to="/people/$patient" params={{ patient: data.patient }} hash="entries">
          the entries
        </Link>
      </p>
      <div className="screenOnly">
        <Why about="of a fracture, as the instrument gave it" word="write a risk">
          <EntryForm kind="baseline-risk" patient={data.patient} seq={data.seq} dateWord="Worked out on" />
        </Why>
      </div>
    </section>
  );
}
