import type { CriterionView } from '@twelvemonth/exchange';
import css from './Review.module.css';
import { ToEntries } from './ToEntries.tsx';

/** Word and shape say the state; nothing is coloured. */
const shapes = { met: '■', 'not met': '□', 'cannot say': '?' } as const;

/** A rule in its parts: each met, not met, or not to be said, with why and with its source. */
export function Criteria({
  id,
  title,
  says,
  criteria,
  patient,
}: {
  id: string;
  title: string;
  says: string;
  criteria: readonly CriterionView[];
  patient: string;
}) {
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      <p>{says}</p>
      <table className={`stacks ${css['criteria']}`}>
        <thead>
          <tr>
            <th scope="col">asked</th>
            <th scope="col">answer</th>
            <th scope="col">because</th>
            <th scope="col">source</th>
          </tr>
        </thead>
        <tbody>
          {criteria.map((one) => (
            <tr key={one.asks}>
              <th scope="row">{one.asks}</th>
              <td data-head="answer" className="nowrap">
                <span aria-hidden="true">{shapes[one.is]}</span> {one.is}
              </td>
              <td data-head="because">
                {one.says} <ToEntries entries={one.entries} patient={patient} about={one.asks} />
              </td>
              <td data-head="source" className="quiet small">
                {one.source}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
