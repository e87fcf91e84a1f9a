import { type Sheet, sourceText } from '@twelvemonth/counselling';
import { Why } from '../paper/Why.tsx';
import css from './Deciding.module.css';

/** What the nearest trial found in the people it took, which is not this person's own risk. */
export function FoundInTrial({ found }: { found: Sheet['found'] }) {
  if (found === undefined || found.effects.length === 0) return null;
  return (
    <section aria-labelledby="found">
      <h2 id="found">What the trial found in its own people</h2>
      <p>
        {found.lead} It took {found.trial.tookPart}. Their risk is not yours.
      </p>
      <ul className={css['plain']}>
        {found.effects.map(({ effect, says }) => (
          <li key={effect.outcome}>{says}</li>
        ))}
      </ul>
      <Why about="the numbers of the trial come from" word="where these numbers come from">
        {found.effects.map(({ effect: { outcome, treated, untreated, relative } }) => (
          <p key={outcome}>
            {outcome}: {untreated?.percent} % and {treated?.percent} %
            {relative === undefined
              ? ''
              : `; ${relative.measure} ${relative.value}${typeof relative.interval === 'string' ? `, range ${relative.interval}` : ` (${relative.interval.from} to ${relative.interval.to})`}`}
            . {treated === undefined ? '' : sourceText(treated.source)}
          </p>
        ))}
      </Why>
    </section>
  );
}
