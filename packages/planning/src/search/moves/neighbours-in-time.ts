/** One visit and those that begin nearest to it: they are the ones it competes with. */
import { type Draft, isPlaced } from '../draft.ts';
import { costOf } from '../guide.ts';
import { stride } from '../problem.ts';
import type { Move, Situation } from './move.ts';

const blurTicks = 12;
const tournament = 4;

const beginOf = (draft: Draft, visit: number): number =>
  isPlaced(draft, visit) ? draft.times[visit * stride]! : draft.problem.earliest[visit]!;

function nearest({ draft, draw, movable, score }: Situation, seed: number, size: number, chosen: Int16Array): number {
  const begin = beginOf(draft, seed);
  chosen[0] = seed;
  let count = 1;
  for (const visit of movable) {
    if (visit === seed) continue;
    const distance = Math.abs(beginOf(draft, visit) - begin) + draw(blurTicks);
    if (count === size && distance >= score[chosen[count - 1]!]!) continue;
    score[visit] = distance;
    // Kept in order of distance, the farthest dropped when there are enough.
    let at = count < size ? count : count - 1;
    for (; at > 1 && score[chosen[at - 1]!]! > distance; at -= 1) chosen[at] = chosen[at - 1]!;
    chosen[at] = visit;
    if (count < size) count += 1;
  }
  return count;
}

export const neighboursOfAny: Move = (situation, size, chosen) =>
  nearest(situation, situation.movable[situation.draw(situation.movable.length)]!, size, chosen);

/** Begins at a visit that waits, ends late or has no place. */
export const neighboursOfCostly: Move = (situation, size, chosen) => {
  const { draft, guide, draw, movable } = situation;
  let seed = movable[draw(movable.length)]!;
  for (let round = 0; round < tournament; round += 1) {
    const other = movable[draw(movable.length)]!;
    if (costOf(draft, guide, other) > costOf(draft, guide, seed)) seed = other;
  }
  return nearest(situation, seed, size, chosen);
};
