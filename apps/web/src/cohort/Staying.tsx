import type { CohortView } from '@twelvemonth/exchange';
import css from './Cohort.module.css';
import { Curve } from './Curve.tsx';

const ofHundred = (share: number): string => (share * 100).toFixed(1);

/** Kaplan-Meier of staying on treatment, its limits, and beside it what is left when death competes. */
export function Staying({ staying }: { staying: NonNullable<CohortView['staying']> }) {
  return (
    <>
      <Curve curve={staying} />
      <table className={css['limits']}>
        <caption>On treatment, of 100 people (Kaplan-Meier; 95 in 100 limits)</caption>
        <thead>
          <tr>
            <th scope="col">by</th>
            <th scope="col">on treatment</th>
            <th scope="col">from</th>
            <th scope="col">to</th>
          </tr>
        </thead>
        <tbody>
          {staying.limits.map(({ says, survival, lower, upper }) => (
            <tr key={says}>
              <th scope="row">{says}</th>
              <td>{ofHundred(survival)}</td>
              <td>{ofHundred(lower)}</td>
              <td>{ofHundred(upper)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className={css['counted']}>
        “On treatment” takes those who died as if they might still have left; “off treatment” and “died” do not, so the
        three need not make a hundred.
      </p>
    </>
  );
}
