import { Link } from '@tanstack/react-router';
import type { CohortCurve } from '@twelvemonth/exchange';
import { Why } from '../paper/Why.tsx';
import { shortDay } from '../words/dates.ts';
import css from './Cohort.module.css';
import { InUnitWords } from '../words/InUnitWords.tsx';

/** Those who came are many and well; the list is for who did not. */
const notListed = 'came';

/** Who stands behind each end: when, and why. */
export function People({ ends, who, about }: Pick<CohortCurve, 'ends' | 'who'> & { about: string }) {
  return (
    <div className={css['lists']}>
      {ends
        .filter(({ end, count }) => count > 0 && end !== notListed)
        .map(({ end, count }) => (
          <Why key={end} about={`${about}, ${end}`} word={`${end}: who (${count})`}>
            <table className="stacks">
              <thead>
                <tr>
                  <th scope="col">who</th>
                  <th scope="col">dose before</th>
                  <th scope="col">on</th>
                  <th scope="col">why</th>
                </tr>
              </thead>
              <tbody>
                {who
                  .filter((one) => one.end === end)
                  .map((one) => (
                    <tr key={one.patient}>
                      <th scope="row">
                        <Link to="/people/$patient" params={{ patient: one.patient }}>
                          {one.name}
                        </Link>
                      </th>
                      <td className="nowrap">{shortDay(one.from)}</td>
                      <td className="nowrap">{shortDay(one.on)}</td>
                      <td>
                        <InUnitWords>{one.why}</InUnitWords>
                      </td>
                    </tr>
                  ))}
              </tbody>
            </table>
          </Why>
        ))}
    </div>
  );
}
