import { Link } from '@tanstack/react-router';
import type { SessionRow } from '@twelvemonth/exchange';
import { Verdict } from '../verdict/Verdict.tsx';
import { dayInWords } from '../words/dates.ts';
import { counted } from '../words/texts.ts';
import css from './Sessions.module.css';

/** Sessions by date: how full, and how many of those booked will not be ready. */
export function SessionsTable({ rows, today }: { rows: readonly SessionRow[]; today: string }) {
  return (
    <table className={`stacks ${css['list']}`}>
      <thead>
        <tr>
          <th scope="col">date</th>
          <th scope="col">hours</th>
          <th scope="col">places</th>
          <th scope="col">known trouble</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.session}>
            <th scope="row">
              <Link to="/sessions/$session" params={{ session: row.session }}>
                {dayInWords(row.on)}
              </Link>
              {row.on === today && <span className="quiet"> today</span>}
            </th>
            <td>
              {row.opensAt} to {row.closesAt}
            </td>
            <td>
              {row.cancelled ? (
                <strong>cancelled</strong>
              ) : (
                <>
                  <span className={css['fill']} aria-hidden="true">
                    <span style={{ width: `${row.places === 0 ? 0 : Math.round((100 * row.taken) / row.places)}%` }} />
                  </span>
                  {row.taken} of {row.places} taken
                </>
              )}
            </td>
            <td>
              {row.trouble === 0 ? (
                <span className="quiet">none</span>
              ) : (
                <Verdict is="not ready">{counted(row.trouble, 'person', 'people')} will not be ready</Verdict>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
