/** Nobody whose bone medicine waits for its successor is stopped, paused or closed without it (the safety page: "a promise with a date"). */
import { type Day, shortDate } from '../calendar/day.ts';
import { clockOf } from '../clock/clock.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Role } from '../ledger/role.ts';
import type { Fact, SubjectRecord } from '../record/patient-record.ts';
import { type Refusal } from './refusal.ts';
import { notYours, refusal } from './refuse.ts';

/** Refused while a clock runs. */
export function needsWhatFollows(
  record: SubjectRecord,
  protocol: Protocol | undefined,
  on: Day,
  field: string,
  what: 'stopped or paused' | 'closed',
): readonly Refusal[] {
  const clock = protocol === undefined ? undefined : clockOf(record, protocol, on, undefined);
  if (clock === undefined) return [];
  const { medicine, last, reachBy } = clock;
  return [
    refusal(
      'needs-what-follows',
      `${medicine} of ${shortDate(last.on)} is not ${what} without what follows it: bone is lost and vertebrae may break when nothing does.`,
      {
        field,
        remedy: `${remedies[what](shortDate(reachBy))}; what was begun elsewhere is recorded first, as a medicine`,
      },
    ),
  ];
}

const remedies = {
  'stopped or paused': (reachBy: string) =>
    `choose another treatment and the date it is due, ${reachBy} at the latest, or carry on`,
  closed: (reachBy: string) =>
    `a prescriber decides in a review on another treatment, due ${reachBy} at the latest, and you say who gives it; or care is transferred to another service, and is ours until they acknowledge; or, near the end of life or by their wish, a prescriber closes it and says why nothing follows and what was told of the risk`,
};

/** Closing: a review has decided what follows, by a day still to come and in time, and somebody gives it; or a prescriber decides that nothing does. */
export function checkClosed(
  record: SubjectRecord,
  { body, on }: Fact<'closed'>,
  path: string,
  protocol: Protocol | undefined,
  role: Role,
): readonly Refusal[] {
  if (body.nothingFollows !== undefined)
    return role === 'prescriber' ? [] : [notYours(role, 'decide that nothing follows', ['prescriber'])];
  if (protocol === undefined) return [];
  const isDecided = clockOf(record, protocol, on, undefined)?.plannedOn !== undefined;
  if (!isDecided) return needsWhatFollows(record, protocol, on, path, 'closed');
  return body.takenOverBy === undefined ? needsWhatFollows(record, protocol, on, `${path}.takenOverBy`, 'closed') : [];
}
