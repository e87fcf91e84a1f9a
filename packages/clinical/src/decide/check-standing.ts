/** Whether an entry may follow from where the person stands: the transition table decides. */
import type { Day } from '../calendar/day.ts';
import type { Fact, SubjectRecord } from '../record/patient-record.ts';
import { heldBy, standingOf } from '../standing/standing.ts';
import { type StandingEvent, mayHappenFrom } from '../standing/transitions.ts';
import { type Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';
import type { Surroundings } from './surroundings.ts';

const remedies: Partial<Record<StandingEvent, string>> = {
  accepted: 'a referral is decided once; a new referral opens a new decision',
  returned: 'only a referral that waits can go back',
  'place booked':
    'the referral must have been accepted, and someone on a break, gone elsewhere or who said no is reopened first',
  reopened: 'nothing is closed, paused or refused',
  'transfer acknowledged': 'record first to whom care goes',
};

/** Doses and deaths happen whatever we think; everything else must be possible from where the person stands that day. */
export function checkPossible(
  record: SubjectRecord,
  event: StandingEvent | undefined,
  on: Day,
  now: Surroundings,
): readonly Refusal[] {
  if (event === undefined) return [];
  const { held } = heldBy(record, on);
  if (mayHappenFrom(held, event)) return [];
  const { says } = standingOf(record, undefined, now.today);
  return [
    refusal('not-possible-from-here', `"${event}" does not follow from where this person is (${says}).`, {
      remedy: remedies[event] ?? 'reopen care first, with the reason',
    }),
  ];
}

/** The event of a line that is about to be written. */
export const asFact = (kind: Fact['kind'], body: Fact['body'], on: Day, now: Surroundings): Fact => ({
  id: '',
  seq: 0,
  act: '',
  kind,
  on,
  at: undefined,
  body,
  author: now.by,
  recordedAt: '',
  first: '',
  firstSeq: 0,
});
