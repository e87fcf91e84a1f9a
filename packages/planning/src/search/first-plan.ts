/**
 * A first plan in a blink: who is tied to a time first, then who has least room to move, then in order of arrival. Who finds
 * no place goes to the head of the queue, a few times over.
 */
import { CLOSE } from './dose.ts';
import { type Draft, isPlaced, lift, put } from './draft.ts';
import { fit } from './fit.ts';
import type { Problem } from './problem.ts';

const rounds = 8;
const choice = { dose: CLOSE, late: false, mostWait: Number.POSITIVE_INFINITY };

function queueOf(problem: Problem, visits: readonly number[]): number[] {
  const slack = (visit: number): number =>
    problem.byTransport[visit] === 1 ? -1 : problem.latest[visit]! - problem.earliest[visit]! - problem.care[visit]!;
  return visits.toSorted((a, b) => slack(a) - slack(b) || problem.earliest[a]! - problem.earliest[b]! || a - b);
}

/** Places the given visits, each once, in that order; returns those that found no place. */
function placeAll(draft: Draft, queue: readonly number[]): number[] {
  const { problem, blocks, room, times } = draft;
  return queue.filter((visit) => {
    const fits = fit(problem, blocks, room, visit, 0, problem.ticks, choice, times);
    if (fits) put(draft, visit);
    return !fits;
  });
}

/** Fills the draft with what of `visits` has no place in it yet. */
export function firstPlan(draft: Draft, visits: readonly number[]): void {
  const open = visits.filter((visit) => !isPlaced(draft, visit));
  let queue = queueOf(draft.problem, open);
  let left = placeAll(draft, queue);
  let fewest = left.length;
  let best = draft.times.slice();
  for (let round = 1; round < rounds && left.length > 0; round += 1) {
    const first = left;
    queue = [...first, ...queue.filter((visit) => !first.includes(visit))];
    for (const visit of open) lift(draft, visit);
    left = placeAll(draft, queue);
    if (left.length >= fewest) continue;
    fewest = left.length;
    best = draft.times.slice();
  }
  if (left.length === fewest) return;
  for (const visit of open) lift(draft, visit);
  draft.times.set(best);
  for (const visit of open) if (isPlaced(draft, visit)) put(draft, visit);
}
