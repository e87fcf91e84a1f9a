import { Link } from '@tanstack/react-router';
import type { TodayView } from '@twelvemonth/exchange';
import css from './Today.module.css';

type Visit = TodayView['visits'][number];

/** Who is here and has not left; the step they are at. */
const isHere = ({ chair, steps }: Visit): boolean =>
  chair !== undefined && steps.some(({ state }) => state === 'running' || state === 'waiting');
const stepOf = ({ steps, infusion }: Visit): string => {
  const now = steps.find(({ state }) => state === 'running' || state === 'waiting');
  return infusion === undefined || now?.step !== 'infusion' ? (now?.step ?? '') : infusion.says;
};

/** Every chair of the unit, with who sits in it. */
export function Chairs({ visits, chairs }: { visits: TodayView['visits']; chairs: number }) {
  const here = visits.filter(isHere);
  if (here.length === 0) return null;
  return (
    <section aria-labelledby="chairs">
      <h2 id="chairs">Chairs</h2>
      <ol className={css['chairs']}>
        {Array.from({ length: chairs }, (_, index) => index + 1).map((chair) => {
          const sitting = here.filter((visit) => visit.chair === chair);
          return (
            <li key={chair}>
              <strong>{chair}</strong>{' '}
              {sitting.length === 0
                ? 'free'
                : sitting.map((visit) => (
                    <span key={visit.patient}>
                      <Link to="/people/$patient/visit" params={{ patient: visit.patient }} className="finger">
                        {visit.name}
                      </Link>
                      <span className={css['detail']}>{stepOf(visit)}</span>
                    </span>
                  ))}
            </li>
          );
        })}
      </ol>
    </section>
  );
}
