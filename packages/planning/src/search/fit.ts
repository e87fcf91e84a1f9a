/**
 * The best times for one visit in what is still free: no waiting if any beginning allows that, otherwise the least waiting
 * found by letting each step begin as soon as it can.
 */
import type { Blocks } from './block.ts';
import { chainFrom } from './chain-with-waits.ts';
import { type DoseChoice, doseFits, placeDose } from './dose.ts';
import { ARRIVES, IN_WATCH_PLACE, LEAVES, type Problem, stride } from './problem.ts';
import type { Room } from './room.ts';

export type FitChoice = {
  dose: DoseChoice;
  /** Steps before a wait are moved to its end, which frees the earlier ticks for others. */
  late: boolean;
  /** Times with more waiting than so many ticks are not looked for. */
  mostWait: number;
};

/** 0 if the block cannot begin at `at`; 1 or 2 if it can, 2 when the watch has a watch place. Negative: -(next tick worth trying). */
function blockFits(problem: Problem, blocks: Blocks, room: Room, visit: number, at: number): number {
  const row = visit * stride;
  const { partAt, partTicks, partWhole } = blocks;
  const whole = room.whole.run;
  const shared = room.shared.run;
  for (let part = row + blocks.partCount[visit]! - 1; part >= row; part -= 1) {
    const run = (partWhole[part] === 1 ? whole : shared)[at + partAt[part]!]!;
    if (run < partTicks[part]!) return -(at + run + 1);
  }
  let answer = 1;
  if (problem.chairFrom[visit]! >= 0) {
    const run = room.chair.run[at + blocks.chairAt[visit]!]!;
    const ticks = blocks.chairTicks[visit]!;
    if (run < ticks) return -(at + run + 1);
    if (problem.watch[visit]! >= 0) {
      if (room.watch.run[at + blocks.watchAt[visit]!]! >= blocks.watchTicks[visit]!) answer = 2;
      else if (run < ticks + blocks.watchTicks[visit]!) return -(at + 1);
    }
  } else if (problem.watch[visit]! >= 0) {
    if (room.watch.run[at + blocks.watchAt[visit]!]! < blocks.watchTicks[visit]!) return -(at + 1);
    answer = 2;
  }
  if (problem.doseBefore[visit]! >= 0 && !doseFits(problem, room, visit, at, at + blocks.doseAt[visit]!))
    return -(at + 1);
  return answer;
}

function writeBlock(
  problem: Problem,
  blocks: Blocks,
  room: Room,
  visit: number,
  at: number,
  inWatchPlace: boolean,
  choice: FitChoice,
  times: Int16Array,
): void {
  const row = visit * stride;
  for (let step = row; step < row + problem.stepCount[visit]!; step += 1) times[step] = at + blocks.stepAt[step]!;
  times[row + ARRIVES] = at;
  times[row + LEAVES] = at + problem.care[visit]!;
  times[row + IN_WATCH_PLACE] = inWatchPlace ? 1 : 0;
  if (problem.doseBefore[visit]! >= 0)
    placeDose(problem, room, visit, at, at + blocks.doseAt[visit]!, choice.dose, times);
}

/**
 * Writes the visit's times into its row, leaving by `leaveBy` at the latest and arriving from `from` on; false, and the row
 * without a place, if it does not fit. The room is not changed.
 */
export function fit(
  problem: Problem,
  blocks: Blocks,
  room: Room,
  visit: number,
  from: number,
  leaveBy: number,
  choice: FitChoice,
  times: Int16Array,
): boolean {
  const begin = Math.max(from, problem.earliest[visit]!);
  const end = Math.min(leaveBy, problem.latest[visit]!);
  const transport = problem.byTransport[visit] === 1;
  if (problem.begun[visit] === 0) {
    const last = transport ? Math.min(begin, end - problem.care[visit]!) : end - problem.care[visit]!;
    for (let at = begin; at <= last;) {
      const answer = blockFits(problem, blocks, room, visit, at);
      if (answer > 0) {
        writeBlock(problem, blocks, room, visit, at, answer === 2, choice, times);
        return true;
      }
      at = -answer;
    }
  }
  times[visit * stride + LEAVES] = -1;
  if (problem.mayWait[visit] === 0 && problem.begun[visit] === 0) return false;
  if (choice.mostWait < 1) return false;
  const arrives = problem.earliest[visit]!;
  const leave = Math.min(end, arrives + problem.care[visit]! + choice.mostWait);
  return transport
    ? chainFrom(problem, room, visit, arrives, begin, leave, choice, times)
    : leastWait(problem, room, visit, begin, end, choice, times);
}

/** Times with one arrival and no other, waiting afterwards where it must. */
export function fitArriving(
  problem: Problem,
  blocks: Blocks,
  room: Room,
  visit: number,
  at: number,
  choice: FitChoice,
  times: Int16Array,
): boolean {
  const end = problem.latest[visit]!;
  times[visit * stride + LEAVES] = -1;
  if (at < problem.earliest[visit]! || at + problem.care[visit]! > end) return false;
  if (problem.begun[visit] === 0) {
    const answer = blockFits(problem, blocks, room, visit, at);
    if (answer > 0) {
      writeBlock(problem, blocks, room, visit, at, answer === 2, choice, times);
      return true;
    }
    if (problem.mayWait[visit] === 0) return false;
  }
  return chainFrom(problem, room, visit, at, at, end, choice, times);
}

const attempt = new Int16Array(stride);

/** Tries every arrival and keeps the times that wait least, the earliest of equals. */
function leastWait(
  problem: Problem,
  room: Room,
  visit: number,
  begin: number,
  end: number,
  choice: FitChoice,
  times: Int16Array,
): boolean {
  const row = visit * stride;
  const care = problem.care[visit]!;
  const isBegun = problem.begun[visit] === 1;
  const first = isBegun ? problem.stepFrom[row]! : begin;
  const last = isBegun ? problem.stepTo[row]! : end - care;
  const most = Math.min(end, choice.mostWait);
  let least = most + 1;
  for (let at = first; at <= last && least > 1; at += 1) {
    if (!chainFrom(problem, room, visit, at, at, Math.min(end, at + care + least - 1), choice, times)) continue;
    least = times[row + LEAVES]! - at - care;
    attempt.set(times.subarray(row, row + stride));
  }
  if (least > most) {
    times[row + LEAVES] = -1;
    return false;
  }
  times.set(attempt, row);
  return true;
}
