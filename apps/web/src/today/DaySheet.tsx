import type { TodayView } from '@twelvemonth/exchange';
import { bornShort } from '../words/dates.ts';
import { dotted, unbroken } from '../words/texts.ts';
import css from './DaySheet.module.css';

const blanks = [
  'arrived',
  'observations',
  'go, or why not',
  'pack: batch, expiry',
  'started',
  'finished',
  'given by',
  'checked by',
] as const;

/** The day's list on paper, with room to write: for when the network is down. Typed in later as late entries. */
export function DaySheet({ data }: { data: TodayView }) {
  return (
    <div className="paperOnly">
      <table className={css['sheet']}>
        <thead>
          <tr>
            <th scope="col">time</th>
            <th scope="col">who</th>
            {blanks.map((blank) => (
              <th key={blank} scope="col">
                {blank}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {data.visits.map((visit) => (
            <tr key={visit.patient}>
              <td>{visit.arriveAt}</td>
              <td>
                <strong>{visit.name}</strong>
                <br />
                {dotted(
                  `born ${bornShort(visit.born)}`,
                  unbroken(visit.number),
                  visit.firstTimer ? 'first dose' : visit.dose,
                  ...visit.needs,
                )}
                <br />
                {visit.outcome !== 'not here yet' && visit.outcome !== 'here'
                  ? visit.outcome
                  : visit.verdict === 'ready'
                    ? 'ready as things stood'
                    : visit.headline}
              </td>
              {blanks.map((blank) => (
                <td key={blank}>{'\u00a0'}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        Both people sign for each dose: who gave it and who checked it, each by their own reading. Last commit number{' '}
        {data.commit}: a machine that has gone back to an older copy shows a smaller one.
      </p>
    </div>
  );
}
