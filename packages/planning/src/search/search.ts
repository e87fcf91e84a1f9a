/** A day made into a plan: a first one at once, then better ones until the limit. The same seed gives the same plan. */
import type { Day } from '../day/day.ts';
import { type Objective, objectiveOf } from '../plan/objective.ts';
import type { Plan } from '../plan/plan.ts';
import { drawFrom } from '../random.ts';
import { emptyDraft } from './draft.ts';
import { firstPlan } from './first-plan.ts';
import { improve, warm } from './improve.ts';
import type { Limit } from './limit.ts';
import { planFrom, problemOf, rowsFrom } from './problem.ts';
import { become } from './draft.ts';

export type SearchOptions = {
  readonly seed: number;
  readonly limit: Limit;
  /** A plan to begin with, drawn by hand or of an earlier search. It must be one the referee lets pass. */
  readonly from?: Plan;
  /** Visits of `from`, by their place in the day, whose times must stay as they are. */
  readonly locked?: readonly number[];
};

export type SearchResult = {
  readonly plan: Plan;
  readonly objective: Objective;
  readonly seed: number;
  readonly iterations: number;
};

export function planDay(day: Day, { seed, limit, from, locked = [] }: SearchOptions): SearchResult {
  const draft = emptyDraft(problemOf(day));
  if (from !== undefined) become(draft, rowsFrom(day, from));
  const movable = [...day.visits.keys()].filter((visit) => !locked.includes(visit));
  firstPlan(draft, movable);
  const iterations = improve(draft, Int16Array.from(movable), drawFrom(seed), limit, warm);
  const plan = planFrom(day, draft.times);
  return { plan, objective: objectiveOf(day, plan), seed, iterations };
}

/** The first plan alone: what can be shown at once. */
export const planAtOnce = (day: Day): SearchResult => planDay(day, { seed: 0, limit: { iterations: 0 } });
