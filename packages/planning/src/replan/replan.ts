/**
 * The rest of a day that has begun, after something has changed: somebody is late, a chair or a nurse is lost, an infusion
 * runs long. The day is given as it is now known. What has begun stays; then, in this order: everyone seen, no overtime, as
 * few people as possible told another arrival, least waiting, early finish.
 */
import type { Day, Tick } from '../day/day.ts';
import { type Objective, objectiveOf } from '../plan/objective.ts';
import type { Plan } from '../plan/plan.ts';
import { drawFrom } from '../random.ts';
import { CLOSE } from '../search/dose.ts';
import { type Draft, emptyDraft, put } from '../search/draft.ts';
import { fit, fitArriving } from '../search/fit.ts';
import { calm, improve } from '../search/improve.ts';
import type { Limit } from '../search/limit.ts';
import { ARRIVES, LEAVES, planFrom, problemOf, rowsFrom, stride } from '../search/problem.ts';
import { holdBegun } from '../search/room.ts';
import { stillFits } from '../search/still-fits.ts';
import { tieBegun } from './begun.ts';

export type ReplanOptions = { readonly now: Tick; readonly seed: number; readonly limit: Limit };

export type Moved = { readonly visit: number; readonly from: Tick; readonly to: Tick };

export type Replan = {
  readonly plan: Plan;
  readonly objective: Objective;
  /** People who have to be told another arrival. */
  readonly moved: readonly Moved[];
  /** Visits that had a place and have none any more. */
  readonly lost: readonly number[];
  /** Visits that have begun and cannot be finished within the day's grid: a longer day is needed. */
  readonly stuck: readonly number[];
  readonly iterations: number;
};

const choice = { dose: CLOSE, late: false, mostWait: Number.POSITIVE_INFINITY };

/** Takes over what still fits, then those who have begun, then everybody else with as little change as possible. */
function patch(draft: Draft, old: Int16Array, begun: readonly number[]): void {
  const { problem, blocks, room, times } = draft;
  const isBegun = new Set(begun);
  const arrival = (visit: number): number =>
    old[visit * stride + LEAVES]! < 0 ? problem.ticks : old[visit * stride + ARRIVES]!;
  const inOrder = [...draft.told.keys()].toSorted(
    (a, b) =>
      // Who sits in a chair holds it until they are done: their next steps come first.
      problem.inChair[b]! - problem.inChair[a]! ||
      Number(isBegun.has(b)) - Number(isBegun.has(a)) ||
      arrival(a) - arrival(b) ||
      a - b,
  );
  const open: number[] = [];
  const keep = (visit: number): boolean => {
    if (!stillFits(problem, room, visit, old)) return false;
    times.set(old.subarray(visit * stride, (visit + 1) * stride), visit * stride);
    put(draft, visit);
    return true;
  };
  const place = (visit: number): void => {
    const told = draft.told[visit]!;
    const fits =
      (told >= 0 && fitArriving(problem, blocks, room, visit, told, choice, times)) ||
      fit(problem, blocks, room, visit, 0, problem.ticks, choice, times);
    if (fits) put(draft, visit);
  };
  // What is under way is held first, so that nobody else's next step is put where its nurse and chair are.
  for (const visit of begun) holdBegun(problem, room, visit, old, -1);
  for (const visit of inOrder) {
    if (isBegun.has(visit)) holdBegun(problem, room, visit, old, 1);
    if (keep(visit)) continue;
    if (isBegun.has(visit)) place(visit);
    else open.push(visit);
  }
  open.forEach(place);
}

export function replan(day: Day, plan: Plan, { now, seed, limit }: ReplanOptions): Replan {
  const problem = problemOf(day);
  const old = rowsFrom(day, plan);
  const begun = tieBegun(day, problem, old, now);
  const draft = emptyDraft(problem);
  for (let visit = 0; visit < problem.visits; visit += 1)
    if (old[visit * stride + LEAVES]! >= 0 && problem.byTransport[visit] === 0)
      draft.told[visit] = old[visit * stride + ARRIVES]!;
  patch(draft, old, begun);
  // Who has begun holds a chair and a nurse whatever is free: were they lifted, others would take those, and they could not be
  // put back without breaking a rule. Their own next times were chosen first, with everything free.
  const movable = [...day.visits.keys()].filter((visit) => !begun.includes(visit));
  const iterations = improve(draft, Int16Array.from(movable), drawFrom(seed), limit, calm);
  const next = planFrom(day, draft.times);
  const none = (visit: number): boolean => next[visit] === null;
  return {
    plan: next,
    objective: objectiveOf(day, next),
    moved: next.flatMap((times, visit) => {
      const from = draft.told[visit]!;
      return times === null || from < 0 || times.arrives === from ? [] : [{ visit, from, to: times.arrives }];
    }),
    lost: [...day.visits.keys()].filter((visit) => none(visit) && old[visit * stride + LEAVES]! >= 0),
    stuck: begun.filter(none),
    iterations,
  };
}
