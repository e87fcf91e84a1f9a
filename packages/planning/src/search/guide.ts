/**
 * What the search minimises on its way: the objective's parts as one sum, with a gentle slope where the objective itself is
 * flat. A day that ends at 14:40 because of one person is nearer to 14:35 than one that does so because of five. Decides
 * nothing about which plan is better: that is `rank` alone.
 */
import type { Draft } from './draft.ts';
import { ARRIVES, LEAVES, stride } from './problem.ts';

export type Guide = {
  /** By tick of leaving. */
  readonly leaving: Float64Array;
  /** The best finish so far. */
  finish: number;
};

const perUnseen = 4_000;
export const perTickWaited = 40;
const perDisturbed = 400;
const perTickOfOvertime = 60;
/** How many ticks before the best finish the slope begins. */
const slopeTicks = 14;
const slope = 0.12;
const perTickAfterBest = 10;

export const guideFor = (draft: Draft, bestFinish: number): Guide => {
  const guide = { leaving: new Float64Array(draft.problem.ticks + 1), finish: bestFinish };
  aimAt(draft, guide, bestFinish);
  return guide;
};

/** Moves the slope to just before a new best finish. */
export function aimAt({ problem }: Draft, guide: Guide, bestFinish: number): void {
  const { leaving } = guide;
  guide.finish = bestFinish;
  for (let tick = 0; tick < leaving.length; tick += 1) {
    const late = Math.max(0, tick - (bestFinish - slopeTicks));
    const after = Math.max(0, tick - bestFinish + 1);
    const overtime = Math.max(0, tick - problem.closes);
    leaving[tick] = late * late * slope + after * perTickAfterBest + overtime * perTickOfOvertime;
  }
}

/** What one visit adds. */
export function costOf({ problem, times, told }: Draft, guide: Guide, visit: number): number {
  const row = visit * stride;
  const leaves = times[row + LEAVES]!;
  if (leaves < 0) return perUnseen;
  const disturbed = told[visit]! >= 0 && told[visit] !== times[row + ARRIVES] ? perDisturbed : 0;
  return disturbed + perTickWaited * (leaves - times[row + ARRIVES]! - problem.care[visit]!) + guide.leaving[leaves]!;
}

/** The last tick somebody may leave at for so much. */
export function latestFor({ leaving, finish }: Guide, cost: number): number {
  let tick = Math.min(finish, leaving.length - 1);
  while (tick + 1 < leaving.length && leaving[tick + 1]! <= cost) tick += 1;
  while (tick >= 0 && leaving[tick]! > cost) tick -= 1;
  return tick;
}
