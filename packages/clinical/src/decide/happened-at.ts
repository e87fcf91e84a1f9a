/**
 * Steps typed in later, from the day sheet or from memory: decided as of the time at which they happened, and both times are
 * kept, when it happened and when it was written. No clock of ours timed it, so a person says who did.
 */
import { day, shortDate } from '../calendar/day.ts';
import { type LocalMoment, localDate } from '../ledger/entry.ts';
import type { Fact } from '../record/patient-record.ts';
import { TYPED_IN_LATER } from '../visit/running-time.ts';
import { checkNotFuture } from './check-dates.ts';
import { kindNamed } from '../kinds/index.ts';
import { type Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';
import type { Surroundings } from './surroundings.ts';

/** The surroundings as they were then; as they are where the step happens now. */
export function asItHappened(happenedAt: LocalMoment | undefined, now: Surroundings): Surroundings {
  if (happenedAt === undefined || checkNotFuture(happenedAt, 'happenedAt', now).length > 0) return now;
  return {
    ...now,
    today: day(localDate(happenedAt)),
    moment: happenedAt,
    clock: { boot: TYPED_IN_LATER, uptimeMilliseconds: 0, wall: new Date(Date.parse(happenedAt)).toISOString() },
  };
}

/** Not in the future, and not before the steps it stands on. */
export function checkHappenedAt(
  happenedAt: LocalMoment | undefined,
  earlier: readonly (Fact | undefined)[],
  now: Surroundings,
): readonly Refusal[] {
  if (happenedAt === undefined) return [];
  const before = earlier.flatMap((fact) =>
    fact?.at !== undefined && Date.parse(fact.at) > Date.parse(happenedAt)
      ? [
          refusal(
            'step-out-of-order',
            `${kindNamed(fact.kind).label} was at ${fact.at.slice(11, 16)} on ${shortDate(fact.on)}, later than ${happenedAt.slice(11, 16)}.`,
            { field: 'happenedAt', remedy: 'give the time at which it really happened' },
          ),
        ]
      : [],
  );
  return [...checkNotFuture(happenedAt, 'happenedAt', now), ...before];
}
