/** Whether a visit's old times still fit into what is free: nothing is searched, only looked at. */
import { CHECK, IN_WATCH_PLACE, LEAVES, PREPARATION, ARRIVES, type Problem, stride } from './problem.ts';
import type { Lane, Room } from './room.ts';

const isFree = (lane: Lane, at: number, ticks: number): boolean => ticks === 0 || (at >= 0 && lane.run[at]! >= ticks);

function stepsFit(problem: Problem, room: Room, visit: number, rows: Int16Array): boolean {
  const row = visit * stride;
  for (let cell = row; cell < row + problem.stepCount[visit]!; cell += 1) {
    const at = rows[cell]!;
    const units = problem.stepUnits[cell]!;
    const ticks = problem.stepTicks[cell]!;
    if (at < problem.stepFrom[cell]! || at > problem.stepTo[cell]!) return false;
    // A step that takes longer than it did may run into the next.
    if (cell > row && at < rows[cell - 1]! + problem.stepTicks[cell - 1]!) return false;
    if (problem.stepFrom[cell] === problem.stepTo[cell]) continue;
    if (units > 0 && !isFree(units > 1 || problem.wholeUnits === 1 ? room.whole : room.shared, at, ticks)) return false;
  }
  return true;
}

function placesFit(problem: Problem, room: Room, visit: number, rows: Int16Array): boolean {
  const row = visit * stride;
  const watch = problem.watch[visit]!;
  const inPlace = watch >= 0 && rows[row + IN_WATCH_PLACE] === 1;
  if (
    inPlace &&
    problem.watchedIn[visit] !== 1 &&
    !isFree(room.watch, rows[row + watch]!, problem.stepTicks[row + watch]!)
  )
    return false;
  const from = problem.chairFrom[visit]!;
  if (from < 0 || problem.inChair[visit] === 1) return true;
  const last = row + (watch >= 0 && !inPlace ? watch : problem.chairTo[visit]!);
  return isFree(room.chair, rows[row + from]!, rows[last]! + problem.stepTicks[last]! - rows[row + from]!);
}

function doseStillFits(problem: Problem, room: Room, visit: number, rows: Int16Array): boolean {
  const row = visit * stride;
  const before = problem.doseBefore[visit]!;
  if (before < 0) return true;
  const preparation = rows[row + PREPARATION]!;
  const check = rows[row + CHECK]!;
  const needed = rows[row + before]!;
  const prepared = preparation + problem.preparationTicks[visit]!;
  if (preparation < rows[row + ARRIVES]! || preparation < problem.preparationFrom[visit]!) return false;
  if (check < prepared || check < problem.checkFrom[visit]!) return false;
  if (check + problem.checkTicks[visit]! > needed || needed - prepared > problem.keepsTicks[visit]!) return false;
  const isPrepared = problem.preparationFrom[visit] === problem.preparationTo[visit];
  const isChecked = problem.checkFrom[visit] === problem.checkTo[visit];
  return (
    (isPrepared || isFree(room.preparation, preparation, problem.preparationTicks[visit]!)) &&
    (isChecked || isFree(room.check, check, problem.checkTicks[visit]!))
  );
}

export function stillFits(problem: Problem, room: Room, visit: number, rows: Int16Array): boolean {
  const row = visit * stride;
  const arrives = rows[row + ARRIVES]!;
  const leaves = rows[row + LEAVES]!;
  if (leaves < 0 || leaves > problem.latest[visit]!) return false;
  if (problem.byTransport[visit] === 1 ? arrives !== problem.earliest[visit] : arrives < problem.earliest[visit]!)
    return false;
  return (
    stepsFit(problem, room, visit, rows) &&
    placesFit(problem, room, visit, rows) &&
    doseStillFits(problem, room, visit, rows)
  );
}
