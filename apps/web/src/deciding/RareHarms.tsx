import { harmScale } from '@twelvemonth/charts';
import { hipsSparedBeside, howCommon, rareHarms, rareOutOf, sourceText, withoutNumber } from '@twelvemonth/counselling';
import { Picture } from '../drawing/Picture.tsx';
import { Why } from '../paper/Why.tsx';
import css from './Deciding.module.css';

/** Harms that few have, all of one number, on one scale; what each would look like and what to do. */
export function RareHarms() {
  const rows = rareHarms.map(({ what, when, treated, untreated }) => ({
    says: `${what}, ${when}`,
    point: treated.point,
    range: treated.range,
    without: untreated?.point,
    common: howCommon(treated),
  }));
  const { from, to } = hipsSparedBeside.range;
  return (
    <section aria-labelledby="rare">
      <h2 id="rare">Harms that few people have</h2>
      <p>
        All of {rareOutOf.toLocaleString('en-GB')} people. For scale: the drip spared {from} to {to} of{' '}
        {rareOutOf.toLocaleString('en-GB')} a broken hip in three years.
      </p>
      <Picture
        draw={(width) => harmScale({ caption: 'Rare harms', of: rareOutOf, rows }, { width: Math.min(width, 760) })}
      />
      <ul className={css['plain']}>
        {rareHarms.map(({ what, says }) => (
          <li key={what}>
            <strong>{what.charAt(0).toUpperCase() + what.slice(1)}.</strong> {says}
          </li>
        ))}
        {withoutNumber.map((says) => (
          <li key={says}>{says}</li>
        ))}
      </ul>
      <Why about="the numbers for rare harms come from" word="where these numbers come from">
        {rareHarms.map(({ what, sources }) => (
          <p key={what}>
            {what}: {sources.map(sourceText).join('; ')}.
          </p>
        ))}
        <p>Broken hips spared: {sourceText(hipsSparedBeside.source)}.</p>
      </Why>
    </section>
  );
}
