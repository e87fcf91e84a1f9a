import { fairnessOf, tierNames } from '@twelvemonth/planning';
import type { FillView } from '@twelvemonth/exchange';
import { Why } from '../paper/Why.tsx';
import { dayInWords } from '../words/dates.ts';
import { counted } from '../words/texts.ts';
import type { Proposed } from './fill.worker.ts';
import { savedWords } from './lines.ts';

/** How good it is for each tier, and how far from the best there can be. */
export function Tiers({ proposed: { tiers, hasUsualWeights } }: { proposed: Proposed }) {
  return (
    <section aria-labelledby="fill-tiers">
      <h2 id="fill-tiers">How good it is</h2>
      <table className="stacks">
        <thead>
          <tr>
            <th scope="col">tier</th>
            <th scope="col">people</th>
            <th scope="col">without a place</th>
            <th scope="col">days counted</th>
            <th scope="col">no filling could be below</th>
          </tr>
        </thead>
        <tbody>
          {tiers
            .filter(({ people }) => people > 0)
            .map((one) => (
              <tr key={one.tier}>
                <th scope="row">{tierNames[one.tier]}</th>
                <td data-head="people">{one.people}</td>
                <td data-head="without a place">{one.withoutPlace}</td>
                <td data-head="days counted">{one.days}</td>
                <td data-head="no filling could be below">
                  {one.days === one.atLeast ? `${one.atLeast}: proven best` : one.atLeast}
                </td>
              </tr>
            ))}
        </tbody>
      </table>
      <Why about="days counted" word="what is counted">
        <p>
          Days late or early against the day the visit is meant for, another blood draw, a place told that is moved;
          having no place counts most. Those first in line come first, then the urgent; they are never traded for
          others.
          {hasUsualWeights && ' What counts how much are starting values (common practice, no source).'}
        </p>
      </Why>
    </section>
  );
}

/** What one more place or nurse would buy. */
export function OneMoreWould({ proposed: { oneMore }, view }: { proposed: Proposed; view: FillView }) {
  const useful = oneMore.filter(({ best }) => best.length > 0);
  return (
    <section aria-labelledby="fill-one-more">
      <h2 id="fill-one-more">What one more would buy</h2>
      {useful.length === 0 ? (
        <p>Nothing: neither one more place of any kind nor one more nurse in any session would save a day.</p>
      ) : (
        <ul>
          {useful.map(({ of, best }) => (
            <li key={of}>
              {of}:{' '}
              {best
                .map(
                  ({ session, days, tier }) =>
                    `on ${dayInWords(view.sessions[session]?.on ?? '')} saves ${savedWords(days, tier)}`,
                )
                .join('; ')}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

/** Waits by group, side by side: reported, never used to choose. */
export function Fairness({ proposed: { request, session }, view }: { proposed: Proposed; view: FillView }) {
  return (
    <section aria-labelledby="fill-fairness">
      <h2 id="fill-fairness">Who would wait how long</h2>
      <p className="quiet">
        Days past the day the visit is meant for. Reported, never used to choose; with few people it is chance.
      </p>
      <table className="stacks">
        <thead>
          <tr>
            <th scope="col">group</th>
            <th scope="col">people</th>
            <th scope="col">without a place</th>
            <th scope="col">half up to</th>
            <th scope="col">nine in ten up to</th>
          </tr>
        </thead>
        <tbody>
          {view.groupings.flatMap(({ by, of }) =>
            fairnessOf(
              { ...request, people: request.people.map((one, index) => ({ ...one, group: of[index] ?? '' })) },
              session,
            )
              .toSorted((a, b) => a.group.localeCompare(b.group))
              .map((one) => (
                <tr key={`${by} ${one.group}`}>
                  <th scope="row">
                    {by}: {one.group}
                  </th>
                  <td data-head="people">{one.people}</td>
                  <td data-head="without a place">{one.withoutPlace}</td>
                  <td data-head="half up to">{counted(one.medianDaysLate, 'day')}</td>
                  <td data-head="nine in ten up to">{counted(one.ninthDecileDaysLate, 'day')}</td>
                </tr>
              )),
          )}
        </tbody>
      </table>
    </section>
  );
}
