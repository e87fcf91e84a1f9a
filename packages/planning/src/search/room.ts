/**
 * What is still free in each tick, and how far it stays free from there on: `run[t]` is the number of ticks in a row, from
 * t, in which at least `least` are free. Whether a step of any length fits at t is then one comparison.
 */
import { ARRIVES, CHECK, IN_WATCH_PLACE, LEAVES, PREPARATION, type Problem, stride } from './problem.ts';

export type Lane = { readonly free: Int16Array; readonly least: number; readonly run: Int16Array };

export type Room = {
  /** All that the lanes hold, in one piece: so that a room is copied in one go. */
  readonly cells: Int16Array;
  /** Two lanes over the same free units: enough for a whole nurse, enough to keep an eye on one more. */
  readonly whole: Lane;
  readonly shared: Lane;
  readonly chair: Lane;
  readonly watch: Lane;
  readonly preparation: Lane;
  readonly check: Lane;
};

/** Brings `run` up to date after the free numbers of [from, to) have changed. */
function renew(lane: Lane, from: number, to: number): void {
  const { free, least, run } = lane;
  let length = run[to]!;
  let tick = to - 1;
  for (; tick >= from; tick -= 1) {
    length = free[tick]! >= least ? length + 1 : 0;
    run[tick] = length;
  }
  // Before the change only lengths differ, up to the first tick that is not free or already right.
  for (; tick >= 0 && free[tick]! >= least; tick -= 1) {
    length += 1;
    if (run[tick] === length) return;
    run[tick] = length;
  }
}

const capacities = 5;
const lanes = 6;

export function emptyRoom(problem: Problem): Room {
  const { ticks } = problem;
  const cells = new Int16Array(capacities * ticks + lanes * (ticks + 1));
  let used = 0;
  const next = (length: number): Int16Array => cells.subarray(used, (used += length));
  const freeOf = (capacity: Int16Array): Int16Array => {
    const free = next(ticks);
    free.set(capacity);
    return free;
  };
  const laneOver = (free: Int16Array, least: number): Lane => {
    const lane = { free, least, run: next(ticks + 1) };
    renew(lane, 0, ticks);
    return lane;
  };
  const units = freeOf(problem.nurseUnits);
  return {
    cells,
    whole: laneOver(units, problem.wholeUnits),
    shared: laneOver(units, 1),
    chair: laneOver(freeOf(problem.chairs), 1),
    watch: laneOver(freeOf(problem.watchPlaces), 1),
    preparation: laneOver(freeOf(problem.preparers), 1),
    check: laneOver(freeOf(problem.checkers), 1),
  };
}

function change(lane: Lane, from: number, to: number, by: number): void {
  if (to <= from) return;
  const { free } = lane;
  for (let tick = from; tick < to; tick += 1) free[tick]! += by;
  renew(lane, from, to);
}

/** Takes (sign -1) or gives back (sign 1) everything the visit uses at its times. */
function apply(problem: Problem, room: Room, visit: number, times: Int16Array, sign: number): void {
  const row = visit * stride;
  const steps = problem.stepCount[visit]!;
  let first = -1;
  let last = 0;
  for (let step = 0; step < steps; step += 1) {
    const units = problem.stepUnits[row + step]!;
    if (units === 0) continue;
    const from = times[row + step]!;
    const to = from + problem.stepTicks[row + step]!;
    const { free } = room.whole;
    for (let tick = from; tick < to; tick += 1) free[tick]! += sign * units;
    if (first < 0) first = from;
    last = to;
  }
  if (first >= 0) {
    renew(room.whole, first, last);
    renew(room.shared, first, last);
  }
  const watch = problem.watch[visit]!;
  const inPlace = watch >= 0 && times[row + IN_WATCH_PLACE] === 1;
  if (problem.chairFrom[visit]! >= 0) {
    const end = watch >= 0 && !inPlace ? watch : problem.chairTo[visit]!;
    change(
      room.chair,
      times[row + problem.chairFrom[visit]!]!,
      times[row + end]! + problem.stepTicks[row + end]!,
      sign,
    );
  }
  if (inPlace) change(room.watch, times[row + watch]!, times[row + watch]! + problem.stepTicks[row + watch]!, sign);
  if (problem.doseBefore[visit]! >= 0) {
    const preparation = times[row + PREPARATION]!;
    const check = times[row + CHECK]!;
    change(room.preparation, preparation, preparation + problem.preparationTicks[visit]!, sign);
    change(room.check, check, check + problem.checkTicks[visit]!, sign);
  }
}

export const take = (problem: Problem, room: Room, visit: number, times: Int16Array): void =>
  apply(problem, room, visit, times, -1);

/** Frees what the visit used and marks it as having no place. */
export function giveBack(problem: Problem, room: Room, visit: number, times: Int16Array): void {
  apply(problem, room, visit, times, 1);
  times[visit * stride + LEAVES] = -1;
}

/**
 * Takes (sign -1) or gives back (sign 1) what a visit that has begun holds whatever becomes of the rest of it: the steps tied
 * to their times, and the chair at least until its last step could end.
 */
export function holdBegun(problem: Problem, room: Room, visit: number, times: Int16Array, sign: number): void {
  const row = visit * stride;
  let open = 0;
  let chairUntil = 0;
  for (let step = 0; step < problem.stepCount[visit]!; step += 1) {
    const cell = row + step;
    const ticks = problem.stepTicks[cell]!;
    const isTied = problem.stepFrom[cell] === problem.stepTo[cell];
    const end = times[cell]! + ticks;
    if (isTied && problem.stepUnits[cell]! > 0) {
      change(room.whole, times[cell]!, end, sign * problem.stepUnits[cell]!);
      renew(room.shared, times[cell]!, end);
    }
    if (isTied) chairUntil = end;
    else if (step <= problem.chairTo[visit]!) open += ticks;
    if (isTied && step === problem.watch[visit] && times[row + IN_WATCH_PLACE] === 1)
      change(room.watch, times[cell]!, end, sign);
  }
  if (problem.inChair[visit] === 1)
    change(room.chair, times[row + problem.chairFrom[visit]!]!, Math.min(problem.ticks, chairUntil + open), sign);
}

/** Ticks the placed visit waits. */
export const waitIn = (problem: Problem, visit: number, times: Int16Array): number =>
  times[visit * stride + LEAVES]! - times[visit * stride + ARRIVES]! - problem.care[visit]!;
