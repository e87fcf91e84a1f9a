/** The two things a register is sorted and counted by: the verdict on a date, and the dates of the window. */
import type { Day } from '../calendar/day.ts';
import type { SubjectRecord } from '../record/patient-record.ts';
import { evidenceOf } from '../requirements/evidence.ts';
import type { DecisionContext } from './context.ts';
import { firstPlan } from './plan.ts';
import { type Verdict, worse } from './verdict.ts';
import { datesOf } from './window.ts';
import { type World, judgeOn, worldOf } from './world.ts';

export type BriefAnswer = {
  readonly verdict: Verdict;
  /** Undefined: no date can be told. Its last day undefined: runs past the horizon. */
  readonly window: { readonly first: Day; readonly last: Day | undefined } | undefined;
};

/** What `readiness` and `verdictOn` say of a date, in a fraction of the time: no spans, no steps, no working. */
export function briefAnswer(record: SubjectRecord, context: DecisionContext, today: Day, on: Day = today): BriefAnswer {
  const world = worldOf(evidenceOf(record, today), context);
  return { verdict: verdictAt(world, on), window: windowDates(world) };
}

export function verdictAt(world: World, on: Day): Verdict {
  let verdict: Verdict = 'does not apply';
  for (const id of world.order) {
    verdict = worse(verdict, judgeOn(world, id, on).on(on).verdict);
    // Nothing is worse.
    if (verdict === 'not ready') return verdict;
  }
  return verdict;
}

export function windowDates(world: World): BriefAnswer['window'] {
  const plan = firstPlan(world);
  return plan === undefined ? undefined : datesOf(world, plan);
}
