import { Link } from '@tanstack/react-router';
import type { TodayView } from '@twelvemonth/exchange';
import { dayInWords } from '../words/dates.ts';
import { sentence } from '../words/texts.ts';

/** Booked, and nothing may be prepared until a pharmacist or the prescriber has spoken. */
export function HeldByPharmacy({ held }: { held: TodayView['heldByPharmacy'] }) {
  return (
    <section aria-labelledby="held-by-pharmacy">
      <h2 id="held-by-pharmacy">Prescriptions refused or not verified, with a place</h2>
      <table className="stacks">
        <thead className="unseen">
          <tr>
            <th scope="col">who</th>
            <th scope="col">place</th>
            <th scope="col">what is missing</th>
          </tr>
        </thead>
        <tbody>
          {held.map((each) => (
            <tr key={each.patient}>
              <th scope="row" style={{ width: '15rem' }}>
                <Link to="/people/$patient" params={{ patient: each.patient }}>
                  {each.name}
                </Link>
              </th>
              <td className="nowrap" style={{ width: '10rem' }}>
                {dayInWords(each.on)}
              </td>
              <td>
                {each.refused && <strong>Pharmacist refused: no dose as it stands. </strong>}
                {sentence(each.says)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="screenOnly">
        <Link to="/pharmacy" className="finger">
          Open the pharmacy's list
        </Link>
      </p>
    </section>
  );
}
