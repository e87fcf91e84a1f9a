/** When a dose is prepared and checked: after arrival, checked before its step begins, not finished too early for it. */
import { CHECK, PREPARATION, type Problem, stride } from './problem.ts';
import type { Room } from './room.ts';

/** Which of several possible moments: the last, the first, or one that leaves no gap in the preparers' work. */
export type DoseChoice = 0 | 1 | 2;
export const LAST: DoseChoice = 0;
export const FIRST: DoseChoice = 1;
export const CLOSE: DoseChoice = 2;

/** What has begun is a fact: it needs no room. */
const isBegun = (from: Int16Array, to: Int16Array, visit: number): boolean => from[visit] === to[visit];

/** The first tick from `from` at which the check fits and ends by `by`; -1 if none. */
function checkFrom(problem: Problem, room: Room, visit: number, from: number, by: number): number {
  const ticks = problem.checkTicks[visit]!;
  const last = Math.min(by - ticks, problem.checkTo[visit]!);
  const { run } = room.check;
  const begun = isBegun(problem.checkFrom, problem.checkTo, visit);
  for (let tick = Math.max(from, problem.checkFrom[visit]!); tick <= last; tick += 1)
    if (begun || run[tick]! >= ticks) return tick;
  return -1;
}

/** Whether a dose can be ready for a step that begins at `at`, for a person here from `arrives` on. */
export function doseFits(problem: Problem, room: Room, visit: number, arrives: number, at: number): boolean {
  const ticks = problem.preparationTicks[visit]!;
  const least = Math.max(arrives, at - problem.keepsTicks[visit]! - ticks, problem.preparationFrom[visit]!);
  const last = Math.min(at - problem.checkTicks[visit]! - ticks, problem.preparationTo[visit]!);
  const { run } = room.preparation;
  const begun = isBegun(problem.preparationFrom, problem.preparationTo, visit);
  for (let tick = last; tick >= least; tick -= 1) {
    if ((begun || run[tick]! >= ticks) && checkFrom(problem, room, visit, tick + ticks, at) >= 0) return true;
  }
  return false;
}

/** Writes preparation and check into the row; true if there was a moment for both. */
export function placeDose(
  problem: Problem,
  room: Room,
  visit: number,
  arrives: number,
  at: number,
  choice: DoseChoice,
  times: Int16Array,
): boolean {
  const ticks = problem.preparationTicks[visit]!;
  const least = Math.max(arrives, at - problem.keepsTicks[visit]! - ticks, problem.preparationFrom[visit]!);
  const last = Math.min(at - problem.checkTicks[visit]! - ticks, problem.preparationTo[visit]!);
  const { run } = room.preparation;
  const begun = isBegun(problem.preparationFrom, problem.preparationTo, visit);
  let found = -1;
  for (let tick = last; tick >= least; tick -= 1) {
    if ((!begun && run[tick]! < ticks) || checkFrom(problem, room, visit, tick + ticks, at) < 0) continue;
    found = tick;
    if (choice === LAST) break;
    const touches = tick === 0 || run[tick - 1] === 0 || run[tick] === ticks;
    if (choice === CLOSE && touches) break;
  }
  if (found < 0) return false;
  times[visit * stride + PREPARATION] = found;
  times[visit * stride + CHECK] = checkFrom(problem, room, visit, found + ticks, at);
  return true;
}
