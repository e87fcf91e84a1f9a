import { incidenceCurve } from '@twelvemonth/charts';
import type { CohortCurve } from '@twelvemonth/exchange';
import { Picture } from '../drawing/Picture.tsx';
import { counted } from '../words/texts.ts';
import css from './Cohort.module.css';
import { People } from './People.tsx';

/** One step: the curves, how it was counted, how many ended how, and who they are. */
export function Curve({ curve }: { curve: CohortCurve }) {
  const { title, people, until, rows, lines, ends, who } = curve;
  const id = title.replaceAll(' ', '-').toLowerCase();
  return (
    <section aria-labelledby={id} className={css['step']}>
      <h2 id={id}>{title}</h2>
      {people === 0 ? (
        <p>Nobody of them has come so far.</p>
      ) : (
        <>
          <Picture draw={(width) => incidenceCurve({ caption: title, people, until, rows, lines }, { width })} />
          <p className={css['counted']}>{curve.counted}</p>
          <p>
            {counted(people, 'person', 'people')}:{' '}
            {ends
              .filter(({ count }) => count > 0)
              .map(({ end, count }) => `${count} ${end}`)
              .join(', ')}
            .
          </p>
          {people < fewPeople && (
            <p className={css['counted']}>So few people: a single one moves these curves a lot.</p>
          )}
          <People ends={ends} who={who} about={title} />
        </>
      )}
    </section>
  );
}

/** Said in words; it decides nothing (common practice, no source). */
const fewPeople = 30;
