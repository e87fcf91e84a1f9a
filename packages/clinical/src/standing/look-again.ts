/** The day by which someone looks again, where no entry names one: the protocol's number of days. */
import { type Day, addDays } from '../calendar/day.ts';
import { protocolFor } from '../course/prescribed.ts';
import type { NumberKey } from '../protocol/number-keys.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { SubjectRecord } from '../record/patient-record.ts';

type LookedAt = {
  readonly record: SubjectRecord;
  /** The one in force at the person's unit. */
  readonly protocol: Protocol | undefined;
  readonly today: Day;
};
export type LookAgainKey = Extract<NumberKey, `lookAgain${string}` | `askAgain${string}` | 'letterDays'>;

/** Without a protocol nobody has said how long it may wait: at once. */
export const lookAgainOn = ({ record, protocol, today }: LookedAt, key: LookAgainKey, since: Day): Day =>
  protocol === undefined ? since : addDays(since, protocolFor(protocol, record, today).number[key]);
