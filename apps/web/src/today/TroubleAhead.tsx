import { Link } from '@tanstack/react-router';
import type { TodayView } from '@twelvemonth/exchange';
import { Verdict } from '../verdict/Verdict.tsx';
import { WhyVerdict } from '../verdict/WhyVerdict.tsx';
import { dayInWords } from '../words/dates.ts';
import { InUnitWords } from '../words/InUnitWords.tsx';

/** The verdict stands beside it already. */
const withoutVerdict = (says: string, verdict: string): string =>
  says.startsWith(`${verdict}: `) ? says.slice(verdict.length + 2) : says;

/** Booked in a coming session and not ready on its date, known today. */
export function TroubleAhead({ trouble }: { trouble: TodayView['trouble'] }) {
  const dates = [...new Set(trouble.map((each) => each.on))].toSorted();
  return (
    <>
      {dates.map((on) => (
        <section key={on} aria-label={`Not ready for ${dayInWords(on)}`}>
          <h2>Will not be ready for {dayInWords(on)}, known today</h2>
          <table className="stacks">
            <thead className="unseen">
              <tr>
                <th scope="col">who</th>
                <th scope="col">verdict</th>
                <th scope="col">why, and what helps</th>
              </tr>
            </thead>
            <tbody>
              {trouble
                .filter((each) => each.on === on)
                .map((each) => (
                  <tr key={each.patient}>
                    <th scope="row" style={{ width: '15rem' }}>
                      <Link to="/people/$patient" params={{ patient: each.patient }}>
                        {each.name}
                      </Link>
                    </th>
                    <td style={{ width: '9rem' }}>
                      <Verdict is={each.verdict} />
                    </td>
                    <td>
                      <InUnitWords>{withoutVerdict(each.says, each.verdict)}</InUnitWords>
                      <WhyVerdict patient={each.patient} on={on} about={each.name} />
                    </td>
                  </tr>
                ))}
            </tbody>
          </table>
        </section>
      ))}
    </>
  );
}
