import { Link } from '@tanstack/react-router';
import { minutesAndSeconds } from '@twelvemonth/clinical';
import type { SessionDayView } from '@twelvemonth/exchange';
import { useUnit } from '../frame/unit.ts';
import { timeOfDay } from '../words/dates.ts';

/** How soon each second check followed its preparation: a signature given in passing is found here, not by chance. */
export function SecondChecks({ data }: { data: SessionDayView }) {
  const { unit } = useUnit();
  if (data.secondChecks.length === 0) return null;
  return (
    <section aria-labelledby="second-checks">
      <h2 id="second-checks">Second checks</h2>
      <p className="quiet">
        How long after the preparation each was signed, the soonest first. One that came within seconds can hardly have
        been a reading of its own: ask how it was made.
      </p>
      <ul>
        {data.secondChecks.map(({ patient, name, preparedBy, checkedBy, at, agrees, afterSeconds }) => (
          <li key={patient}>
            <strong>
              {afterSeconds === undefined
                ? 'how long after is not known (typed in later, or written without the network)'
                : `${minutesAndSeconds(afterSeconds * 1000)} after`}
            </strong>
            :{' '}
            <Link to="/people/$patient" params={{ patient }}>
              {name}
            </Link>
            , prepared by {preparedBy}, checked by {checkedBy} at {timeOfDay(at, unit?.zone)}
            {agrees ? '' : '; the readings differ'}
          </li>
        ))}
      </ul>
    </section>
  );
}
