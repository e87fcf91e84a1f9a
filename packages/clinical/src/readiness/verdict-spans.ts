/**
 * The verdict as things stand, all requirements together, as spans: what is kept of a person where only the verdict is wanted,
 * for lists and sweeps over thousands. The same judges as `readiness`, without a word of working.
 */
import type { Day } from '../calendar/day.ts';
import type { SubjectRecord } from '../record/patient-record.ts';
import { evidenceOf } from '../requirements/evidence.ts';
import type { DecisionContext } from './context.ts';
import { type Verdict, worse } from './verdict.ts';
import type { Span } from './working.ts';
import { timelineFrom, worldOf } from './world.ts';

/** Ascending, from the day asked on to for ever; neighbours differ. */
export type VerdictSpans = readonly { readonly from: Day; readonly verdict: Verdict }[];

export function verdictSpans(record: SubjectRecord, context: DecisionContext, today: Day): VerdictSpans {
  const world = worldOf(evidenceOf(record, today), context);
  let spans: VerdictSpans = [{ from: today, verdict: 'does not apply' }];
  for (const id of world.order) {
    spans = together(spans, timelineFrom(world, id, today).spans);
    // Nothing is worse.
    if (spans.length === 1 && spans[0]?.verdict === 'not ready') break;
  }
  return spans;
}

/** Both begin on the same day. */
function together(spans: VerdictSpans, said: readonly Span[]): VerdictSpans {
  const only = said.length === 1 ? said[0]?.verdict : undefined;
  if (only !== undefined && spans.every(({ verdict }) => worse(verdict, only) === verdict)) return spans;
  const made: { from: Day; verdict: Verdict }[] = [];
  let span: VerdictSpans[number] | undefined = spans[0];
  let says: Span | undefined = said[0];
  let known: Verdict = 'does not apply';
  let besides: Verdict = 'does not apply';
  for (let at = 0, other = 0; span !== undefined || says !== undefined;) {
    const from = Math.min(span?.from ?? Infinity, says?.from ?? Infinity) as Day;
    if (span?.from === from) {
      known = span.verdict;
      span = spans[(at += 1)];
    }
    if (says?.from === from) {
      besides = says.verdict;
      says = said[(other += 1)];
    }
    const verdict = worse(known, besides);
    if (made[made.length - 1]?.verdict !== verdict) made.push({ from, verdict });
  }
  return made;
}

/** The verdict on a day. The day may not lie before the one asked on. */
export function verdictIn(spans: VerdictSpans, on: Day): Verdict {
  let index = spans.length - 1;
  while (index > 0 && (spans[index]?.from ?? on) > on) index -= 1;
  const span = spans[index];
  if (span === undefined || span.from > on) throw new RangeError('asked about a day before the one asked on');
  return span.verdict;
}
