import { Link } from '@tanstack/react-router';
import type { SessionView } from '@twelvemonth/exchange';
import { SupportWords } from '../supports/SupportWords.tsx';
import { Verdict } from '../verdict/Verdict.tsx';
import { WhyVerdict } from '../verdict/WhyVerdict.tsx';
import { bornShort } from '../words/dates.ts';
import { NearNames } from '../words/NearNames.tsx';
import { dotted, sentence, unbroken } from '../words/texts.ts';
import css from './Sessions.module.css';

/** The list in order of arrival, each with the verdict on that date; free places stand between. */
export function ArrivalList({ session }: { session: SessionView }) {
  const list = session.list.toSorted((a, b) =>
    a.arriveAt < b.arriveAt ? -1 : a.arriveAt > b.arriveAt ? 1 : a.place - b.place,
  );
  return (
    <section aria-labelledby="list">
      <h2 id="list">The list</h2>
      <table className={`stacks ${css['list']}`}>
        <thead>
          <tr>
            <th scope="col" className={css['arrives']}>
              arrives
            </th>
            <th scope="col">who</th>
            <th scope="col">on that date</th>
            <th scope="col">needs</th>
          </tr>
        </thead>
        <tbody>
          {list.map(({ place, arriveAt, who }) =>
            who === undefined ? (
              <tr key={place} className={css['free']}>
                <td>{arriveAt}</td>
                <td colSpan={3}>free</td>
              </tr>
            ) : (
              <tr key={place}>
                <td>
                  <strong>{arriveAt}</strong>
                </td>
                <th scope="row">
                  <Link to="/people/$patient" params={{ patient: who.patient }}>
                    {who.name}
                  </Link>
                  <div className={css['detail']}>
                    {dotted(
                      `born ${bornShort(who.born)}`,
                      unbroken(who.number),
                      who.firstTimer ? 'first dose' : who.dose,
                    )}
                  </div>
                  <div className={css['detail']}>
                    <NearNames names={who.nearNames} />
                  </div>
                </th>
                <td>
                  {who.outcome === 'not here yet' || who.outcome === 'here' ? (
                    <>
                      <Verdict is={who.verdict}>{sentence(who.headline)}</Verdict>
                      <WhyVerdict patient={who.patient} on={session.on} about={who.name} />
                      {who.exceptions.map((says) => (
                        <div key={says} className="small">
                          {sentence(says)}
                        </div>
                      ))}
                    </>
                  ) : (
                    who.outcome
                  )}
                </td>
                <td>
                  {who.needs.join(', ')}
                  <SupportWords patient={who.patient} supports={who.supports} />
                </td>
              </tr>
            ),
          )}
        </tbody>
      </table>
    </section>
  );
}
