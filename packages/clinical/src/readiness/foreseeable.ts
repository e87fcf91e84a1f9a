/**
 * Whether the cause of a put-off could have been seen: what was known and true seven days before already said, for that date,
 * not ready or cannot say.
 */
import { type Day, addDays, plainDate } from '../calendar/day.ts';
import type { Entry } from '../ledger/entry.ts';
import { recordOf } from '../record/fold.ts';
import { verdictOn, readiness } from './ask.ts';
import type { DecisionContext } from './context.ts';

/** How long before the visit a unit could still have acted: ring, draw, move the place. */
const DAYS_BEFORE = 7;

export function foreseeable(entries: readonly Entry[], context: DecisionContext, on: Day): boolean {
  const subject = entries[0]?.subject;
  if (subject === undefined) return false;
  const then = addDays(on, -DAYS_BEFORE);
  const record = recordOf(subject, entries, { knownAt: `${plainDate(then)}T23:59:59.999Z`, on: then });
  if (record.lastSeq === 0) return false;
  const { verdict } = verdictOn(readiness(record, context, then), on);
  return verdict === 'not ready' || verdict === 'cannot say';
}
