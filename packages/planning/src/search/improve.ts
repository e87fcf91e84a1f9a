/**
 * Lifts a few visits out of the plan and puts them back in another order, thousands of times. A worse plan is taken over now
 * and then, less and less often until the next reheating (simulated annealing over destroy-and-repair moves).
 */
import type { Draw } from '../random.ts';
import { CLOSE, FIRST, LAST } from './dose.ts';
import { type Draft, become, finishOfRank, lift, put, rank } from './draft.ts';
import { type FitChoice, fit, fitArriving } from './fit.ts';
import { type Guide, aimAt, costOf, guideFor, latestFor, perTickWaited } from './guide.ts';
import type { Limit } from './limit.ts';
import { anyVisits } from './moves/any-visits.ts';
import type { Move, Situation } from './moves/move.ts';
import { neighboursOfAny, neighboursOfCostly } from './moves/neighbours-in-time.ts';

/** How readily a worse plan is taken over, at the beginning and the end of each cooling, and about how many tries one takes. */
export type Warmth = {
  readonly hottest: number;
  readonly coldest: number;
  readonly iterations: number;
  /** Visits lifted at once. */
  readonly mostLifted: number;
};

/** For a day that is still empty: anything may still be put elsewhere. */
export const warm: Warmth = { hottest: 25, coldest: 0.5, iterations: 1_200, mostLifted: 5 };
/** For a day people have been told of: few tries, near to what it was. */
export const calm: Warmth = { hottest: 14, coldest: 0.5, iterations: 2_500, mostLifted: 6 };

const askEvery = 128;
const oneInSoMany = 10;
/** Of ten: how often each move is made. */
const moves: readonly Move[] = [
  anyVisits,
  anyVisits,
  anyVisits,
  neighboursOfCostly,
  neighboursOfCostly,
  neighboursOfCostly,
  neighboursOfCostly,
  neighboursOfAny,
  neighboursOfAny,
  neighboursOfAny,
];
const doseChoices = [CLOSE, CLOSE, LAST, FIRST] as const;
const precision = 2 ** 20;

function shuffle(draw: Draw, cells: Int16Array, count: number): void {
  for (let index = count - 1; index > 0; index -= 1) {
    const other = draw(index + 1);
    const held = cells[index]!;
    cells[index] = cells[other]!;
    cells[other] = held;
  }
}

/** Takes the chosen out; returns what they cost. */
function liftAll(draft: Draft, guide: Guide, chosen: Int16Array, count: number): number {
  let cost = 0;
  for (let index = 0; index < count; index += 1) {
    cost += costOf(draft, guide, chosen[index]!);
    lift(draft, chosen[index]!);
  }
  return cost;
}

/** A beginning later than need be: who comes too early may be in the way of somebody who can only come then. */
function somewhere({ problem }: Draft, guide: Guide, draw: Draw, visit: number): number {
  if (problem.byTransport[visit] === 1) return 0;
  const earliest = problem.earliest[visit]!;
  return earliest + draw(Math.max(1, Math.min(problem.latest[visit]!, guide.finish) - problem.care[visit]! - earliest));
}

/** Puts the chosen back, one after the other; false, with some of them still out, once they cost more than `most`. */
function putAll(
  draft: Draft,
  guide: Guide,
  draw: Draw,
  chosen: Int16Array,
  count: number,
  most: number,
  choice: FitChoice,
): boolean {
  const { problem, blocks, room, times } = draft;
  let left = most;
  for (let index = 0; index < count; index += 1) {
    const visit = chosen[index]!;
    choice.dose = doseChoices[draw(doseChoices.length)]!;
    choice.late = draw(2) === 0;
    choice.mostWait = Math.min(problem.ticks, Math.floor(left / perTickWaited));
    const leaveBy = latestFor(guide, left);
    const told = draft.told[visit]!;
    const from = told < 0 && draw(oneInSoMany) === 0 ? somewhere(draft, guide, draw, visit) : 0;
    const isPut =
      (told >= 0 && fitArriving(problem, blocks, room, visit, told, choice, times)) ||
      fit(problem, blocks, room, visit, from, leaveBy, choice, times) ||
      (from > 0 && fit(problem, blocks, room, visit, 0, leaveBy, choice, times));
    if (isPut) put(draft, visit);
    left -= costOf(draft, guide, visit);
    if (left < 0) return false;
  }
  return true;
}

/**
 * Improves the draft in place; `movable` are the visits it may touch. Returns the number of iterations made.
 */
export function improve(
  draft: Draft,
  movable: Int16Array,
  draw: Draw,
  limit: Limit,
  { hottest, coldest, iterations, mostLifted }: Warmth,
): number {
  if (movable.length === 0) return 0;
  let best = draft.times.slice();
  let bestRank = rank(draft);
  const guide = guideFor(draft, finishOfRank(bestRank));
  const situation: Situation = { draft, guide, draw, movable, score: new Float64Array(draft.problem.visits) };
  const chosen = new Int16Array(movable.length);
  const kept = { times: draft.times.slice(), cells: draft.room.cells.slice() };
  const choice: FitChoice = { dose: CLOSE, late: false, mostWait: 0 };
  let iteration = 0;
  for (; iteration < limit.iterations; iteration += 1) {
    if (iteration % askEvery === 0 && limit.stop?.() === true) break;
    const heat = hottest * (coldest / hottest) ** ((iteration % iterations) / iterations);
    const count = moves[draw(moves.length)]!(situation, 1 + draw(mostLifted), chosen);
    // Drawn beforehand how much worse it may become, so that what is worse is given up before it is finished.
    const worse = -heat * Math.log((1 + draw(precision)) / precision);
    const most = liftAll(draft, guide, chosen, count) + worse;
    shuffle(draw, chosen, count);
    if (!putAll(draft, guide, draw, chosen, count, most, choice)) {
      draft.times.set(kept.times);
      draft.room.cells.set(kept.cells);
      continue;
    }
    kept.times.set(draft.times);
    kept.cells.set(draft.room.cells);
    const value = rank(draft);
    if (value >= bestRank) continue;
    bestRank = value;
    best = draft.times.slice();
    aimAt(draft, guide, finishOfRank(value));
  }
  become(draft, best);
  return iteration;
}
