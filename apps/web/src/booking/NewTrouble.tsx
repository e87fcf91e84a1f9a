import type { BookingCheck } from '@twelvemonth/exchange';
import { TextField } from '../fields/TextField.tsx';
import { Verdict } from '../verdict/Verdict.tsx';
import css from './Booking.module.css';
import { InUnitWords } from '../words/InUnitWords.tsx';

type Props = {
  readonly causes: BookingCheck['causes'];
  readonly accepted: readonly string[];
  readonly accept: (causes: readonly string[]) => void;
  readonly reason: string;
  readonly giveReason: (reason: string) => void;
};

/** Trouble on that date, each to be accepted by name before the place is booked; with one reason for all. */
export function NewTrouble({ causes, accepted, accept, reason, giveReason }: Props) {
  if (causes.length === 0) return null;
  return (
    <fieldset>
      <legend>
        <h3>Trouble on that date</h3>
      </legend>
      <ul className={css['causes']}>
        {causes.map((each) => (
          <li key={each.cause}>
            <Verdict is={each.verdict}>
              {each.title}: {each.verdict}
            </Verdict>
            <div className="quiet">
              <InUnitWords>{each.says}</InUnitWords>
            </div>
            {each.acceptable ? (
              <label className={css['accept']}>
                <input
                  type="checkbox"
                  checked={accepted.includes(each.cause)}
                  onChange={(event) =>
                    accept(
                      event.target.checked
                        ? [...accepted, each.cause]
                        : accepted.filter((cause) => cause !== each.cause),
                    )
                  }
                />
                I have seen this and book all the same
              </label>
            ) : (
              <strong>A nurse, prescriber or pharmacist has to accept this.</strong>
            )}
          </li>
        ))}
      </ul>
      {causes.every(({ acceptable }) => acceptable) && (
        <TextField label="Reason for booking all the same" at="accepts.reason" value={reason} onChange={giveReason} />
      )}
    </fieldset>
  );
}
