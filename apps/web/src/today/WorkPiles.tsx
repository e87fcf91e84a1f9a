import type { TodayView } from '@twelvemonth/exchange';
import { ToLink } from '../frame/ToLink.tsx';
import css from './Today.module.css';
import { sinceWhen } from './since-when.ts';

/** Small piles of work, each with its number; a press opens the list behind it. */
export function WorkPiles({ work, today }: { work: TodayView['work']; today: string }) {
  const waiting = work.filter((pile) => pile.count > 0);
  return (
    <section aria-labelledby="work" className="screenOnly">
      <h2 id="work">Waiting for someone</h2>
      {waiting.length === 0 ? (
        <p className="quiet">Nothing waits.</p>
      ) : (
        <ul className={css['piles']}>
          {waiting.map((pile) => (
            <li key={pile.what}>
              <ToLink to={pile.to}>
                {pile.what} <strong>{pile.count}</strong>
                {pile.oldest !== undefined && <span className="quiet small">{sinceWhen(pile.oldest, today)}</span>}
              </ToLink>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
