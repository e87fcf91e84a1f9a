/**
 * A visit without waiting is one rigid block. Its parts as distances from the beginning, so that a block is tried at a tick
 * with a handful of comparisons. Steps in a row that need the same of a nurse are one part.
 */
import { type Problem, stride } from './problem.ts';

export type Blocks = {
  readonly partCount: Int16Array;
  readonly partAt: Int16Array;
  readonly partTicks: Int16Array;
  /** 1: needs a whole nurse; 0: needs an eye kept on it. */
  readonly partWhole: Uint8Array;
  readonly chairAt: Int16Array;
  /** Chair without the watch. */
  readonly chairTicks: Int16Array;
  readonly watchAt: Int16Array;
  readonly watchTicks: Int16Array;
  readonly doseAt: Int16Array;
  /** Distance from arrival to the beginning of each step. */
  readonly stepAt: Int16Array;
};

export function blocksOf(problem: Problem): Blocks {
  const { visits } = problem;
  const cells = (): Int16Array => new Int16Array(visits * stride);
  const rows = (): Int16Array => new Int16Array(visits);
  const blocks = {
    partCount: rows(),
    partAt: cells(),
    partTicks: cells(),
    partWhole: new Uint8Array(visits * stride),
    chairAt: rows(),
    chairTicks: rows(),
    watchAt: rows(),
    watchTicks: rows(),
    doseAt: rows(),
    stepAt: cells(),
  };
  for (let visit = 0; visit < visits; visit += 1) fillIn(problem, blocks, visit);
  return blocks;
}

function fillIn(problem: Problem, blocks: Blocks, visit: number): void {
  const row = visit * stride;
  const { partAt, partTicks, partWhole, stepAt } = blocks;
  let parts = 0;
  let at = 0;
  let openUnits = 0;
  for (let step = 0; step < problem.stepCount[visit]!; step += 1) {
    const units = problem.stepUnits[row + step]!;
    const ticks = problem.stepTicks[row + step]!;
    stepAt[row + step] = at;
    if (units > 0 && units === openUnits) partTicks[row + parts - 1]! += ticks;
    else if (units > 0) {
      partAt[row + parts] = at;
      partTicks[row + parts] = ticks;
      partWhole[row + parts] = units > 1 || problem.wholeUnits === 1 ? 1 : 0;
      parts += 1;
    }
    openUnits = units;
    at += ticks;
  }
  blocks.partCount[visit] = parts;
  const end = (step: number): number => stepAt[row + step]! + problem.stepTicks[row + step]!;
  const from = problem.chairFrom[visit]!;
  if (from >= 0) {
    blocks.chairAt[visit] = stepAt[row + from]!;
    blocks.chairTicks[visit] = end(problem.chairTo[visit]!) - stepAt[row + from]!;
  }
  const watch = problem.watch[visit]!;
  if (watch >= 0) {
    blocks.watchAt[visit] = stepAt[row + watch]!;
    blocks.watchTicks[visit] = problem.stepTicks[row + watch]!;
  }
  if (problem.doseBefore[visit]! >= 0) blocks.doseAt[visit] = stepAt[row + problem.doseBefore[visit]!]!;
}
