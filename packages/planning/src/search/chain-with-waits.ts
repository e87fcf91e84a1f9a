/**
 * One visit's chain step by step, each as soon as it can begin, waiting in between where it must. Beginning a step sooner
 * never harms the next, with one exception: a chair taken too soon may be wanted by somebody else before the visit is done
 * with it; then the person sits down after them.
 */
import { doseFits, placeDose } from './dose.ts';
import type { FitChoice } from './fit.ts';
import { ARRIVES, IN_WATCH_PLACE, LEAVES, type Problem, stride } from './problem.ts';
import type { Room } from './room.ts';

/** How many steps from `step` on follow each other at once. */
function groupSize(problem: Problem, visit: number, step: number): number {
  let size = 1;
  while (step + size < problem.stepCount[visit]! && problem.stepAtOnce[visit * stride + step + size] === 1) size += 1;
  return size;
}

/** Whether a step may begin at `at`, as far as nurses and what has begun are concerned. */
function stepFits(problem: Problem, room: Room, cell: number, at: number): boolean {
  const units = problem.stepUnits[cell]!;
  if (at < problem.stepFrom[cell]! || at > problem.stepTo[cell]!) return false;
  if (problem.stepFrom[cell] === problem.stepTo[cell]) return true;
  if (units === 0) return at + problem.stepTicks[cell]! <= problem.ticks;
  const lane = units > 1 || problem.wholeUnits === 1 ? room.whole : room.shared;
  return lane.run[at]! >= problem.stepTicks[cell]!;
}

/** Writes the steps of one group, beginning at `at`; the tick of its end, -1 if it does not fit, -2 if it never will in this chair. */
function tryGroup(
  problem: Problem,
  room: Room,
  visit: number,
  step: number,
  size: number,
  at: number,
  arrives: number,
  chairUntil: number,
  times: Int16Array,
): number {
  const row = visit * stride;
  let end = at;
  for (let member = step; member < step + size; member += 1) {
    const begins = end;
    end += problem.stepTicks[row + member]!;
    if (member <= problem.chairTo[visit]! && end > chairUntil && problem.inChair[visit] === 0) return -2;
    if (!stepFits(problem, room, row + member, begins)) return -1;
    if (member === problem.doseBefore[visit] && !doseFits(problem, room, visit, arrives, begins)) return -1;
    if (member === problem.watch[visit]) {
      const begun = problem.watchedIn[visit]!;
      const inPlace = begun < 0 ? room.watch.run[begins]! >= problem.stepTicks[row + member]! : begun === 1;
      const mayStay = problem.inChair[visit] === 1 || (problem.chairFrom[visit]! >= 0 && end <= chairUntil);
      if (!inPlace && !mayStay) return -1;
      times[row + IN_WATCH_PLACE] = inPlace ? 1 : 0;
    }
    times[row + member] = begins;
  }
  return end;
}

/** Steps `step` to `last` one after the other from `at` on; the tick of their end, or -1. */
function runSteps(
  problem: Problem,
  room: Room,
  visit: number,
  step: number,
  last: number,
  at: number,
  arrives: number,
  leaveBy: number,
  chairUntil: number,
  times: Int16Array,
): number {
  let next = at;
  for (let first = step; first <= last;) {
    const size = groupSize(problem, visit, first);
    let end = -1;
    for (; next < leaveBy && end === -1; next += 1)
      end = tryGroup(problem, room, visit, first, size, next, arrives, chairUntil, times);
    if (end < 0) return -1;
    next = end;
    first += size;
  }
  return next;
}

/** The last step that follows the chair's last one at once: a watch, as a rule. */
function endOfHeld(problem: Problem, visit: number): number {
  let last = problem.chairTo[visit]!;
  while (last + 1 < problem.stepCount[visit]! && problem.stepAtOnce[visit * stride + last + 1] === 1) last += 1;
  return last;
}

/**
 * Arrives at `arrives`; the first step begins then, or at any tick from `firstAt` on when transport brings the person.
 * Writes the row; false, and the row without a place, if the person cannot leave by `leaveBy`.
 */
export function chainFrom(
  problem: Problem,
  room: Room,
  visit: number,
  arrives: number,
  firstAt: number,
  leaveBy: number,
  choice: FitChoice,
  times: Int16Array,
): boolean {
  const row = visit * stride;
  const lastStep = problem.stepCount[visit]! - 1;
  const chairFrom = problem.chairFrom[visit]!;
  const run = (step: number, last: number, at: number, chairUntil: number): number =>
    runSteps(problem, room, visit, step, last, at, arrives, leaveBy, chairUntil, times);
  times[row + LEAVES] = -1;
  let at = firstAt;
  if (problem.byTransport[visit] === 0) {
    // Who is not brought arrives when the first step begins.
    const size = groupSize(problem, visit, 0);
    if (tryGroup(problem, room, visit, 0, size, at, arrives, problem.ticks, times) < 0) return false;
  }
  at = run(0, (chairFrom < 0 ? lastStep + 1 : chairFrom) - 1, at, problem.ticks);
  if (at < 0) return false;
  if (chairFrom >= 0) {
    const held = endOfHeld(problem, visit);
    let end = -1;
    while (end < 0) {
      while (at < leaveBy && room.chair.run[at] === 0 && problem.inChair[visit] === 0) at += 1;
      if (at >= leaveBy) return false;
      // Within one free stretch of chair a later beginning cannot help: the stretch ends when it ends.
      const chairUntil = at + room.chair.run[at]!;
      end = run(chairFrom, held, at, chairUntil);
      if (end < 0 && problem.inChair[visit] === 1) return false;
      if (end < 0) at = chairUntil;
    }
    at = run(held + 1, lastStep, end, problem.ticks);
    if (at < 0) return false;
  }
  if (at > leaveBy) return false;
  if (problem.mayWait[visit] === 0 && at - arrives > problem.care[visit]!) return false;
  if (choice.late) sitOutWaitsFirst(problem, room, visit, times);
  const before = problem.doseBefore[visit]!;
  if (before >= 0 && !placeDose(problem, room, visit, arrives, times[row + before]!, choice.dose, times)) return false;
  times[row + ARRIVES] = arrives;
  times[row + LEAVES] = at;
  return true;
}

/** Moves the steps before the dose as late as the step after each allows: the person waits first, the nurse is free sooner. */
function sitOutWaitsFirst(problem: Problem, room: Room, visit: number, times: Int16Array): void {
  const row = visit * stride;
  const first = problem.byTransport[visit] === 1 ? 0 : 1;
  for (let step = problem.doseBefore[visit]! - 1; step >= first; step -= 1) {
    if (problem.stepAtOnce[row + step + 1] === 1 || problem.stepAtOnce[row + step] === 1) continue;
    let at = times[row + step + 1]! - problem.stepTicks[row + step]!;
    while (at > times[row + step]! && !stepFits(problem, room, row + step, at)) at -= 1;
    times[row + step] = at;
  }
}
