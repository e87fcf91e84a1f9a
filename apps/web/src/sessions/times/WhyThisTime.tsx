import { type Day, type Plan, clockAt, whyThisTime } from '@twelvemonth/planning';
import { useState } from 'react';
import { Button } from '../../paper/Button.tsx';
import css from './Times.module.css';

/** Earlier times said; the nearest are those somebody asks about. */
const nearest = 3;

/** Worked out when it is asked: what is in the way of an earlier time, and what would have to give. */
export function WhyThisTime({ day, plan, visit, name }: { day: Day; plan: Plan; visit: number; name: string }) {
  const [isOpen, setOpen] = useState(false);
  const why = isOpen ? whyThisTime(day, plan, visit) : undefined;
  return (
    <>
      <Button aria-expanded={isOpen} aria-label={`Why this time? ${name}`} onClick={() => setOpen(!isOpen)}>
        why this time?
      </Button>
      {why !== undefined && why !== null && (
        <div className={css['why']} aria-live="polite">
          <p>{why.says}</p>
          <ul>
            {why.earlier.slice(0, nearest).map(({ arrives, wouldHaveToGive }) => (
              <li key={arrives}>
                {clockAt(day, arrives)}:{' '}
                {wouldHaveToGive.length === 0 ? 'nothing is in the way' : `would need ${wouldHaveToGive.join('; ')}`}
              </li>
            ))}
          </ul>
        </div>
      )}
    </>
  );
}
