/**
 * The verdict as things stand, all requirements together, as spans: what is kept of a person where only the verdict is wanted,
 * for lists and sweeps over thousands. The same judges as `readiness`, without a word of working.
 */
import type { Day } from '../calendar/day.ts';
import type { SubjectRecord } from '../record/patient-record.ts';
import { evidenceOf } from '../requirements/evidence.ts';
import type { DecisionContext } from './context.ts';
import { type Verdict, worse } from './verdict.ts';
import { changesBetween, judgeOn, worldOf } from './world.ts';

/** Ascending, from the day asked on to for ever; neighbours differ. */
export type VerdictSpans = readonly { readonly from: Day; readonly verdict: Verdict }[];

export function verdictSpans(record: SubjectRecord, context: DecisionContext, today: Day): VerdictSpans {
  const world = worldOf(evidenceOf(record, today), context);
  const spans: { from: Day; verdict: Verdict }[] = [];
  for (const from of [today, ...changesBetween(world, world.order, today, undefined)]) {
    let verdict: Verdict = 'does not apply';
    for (const id of world.order) {
      verdict = worse(verdict, judgeOn(world, id, from).on(from).verdict);
      // Nothing is worse.
      if (verdict === 'not ready') break;
    }
    if (spans[spans.length - 1]?.verdict !== verdict) spans.push({ from, verdict });
  }
  return spans;
}

/** The verdict on a day. The day may not lie before the one asked on. */
export function verdictIn(spans: VerdictSpans, on: Day): Verdict {
  let index = spans.length - 1;
  while (index > 0 && (spans[index]?.from ?? on) > on) index -= 1;
  const span = spans[index];
  if (span === undefined || span.from > on) throw new RangeError('asked about a day before the one asked on');
  return span.verdict;
}
