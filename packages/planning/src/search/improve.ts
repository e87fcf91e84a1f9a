/**
 * Lifts a few visits out of the plan and puts them back in another order, thousands of times. A worse plan is taken over now
 * and then, less and less often until the next reheating (simulated annealing over destroy-and-repair moves).
 */
import type { Draw } from '../random.ts';
import { CLOSE, FIRST, LAST } from './dose.ts';
import { type Draft, become, finishOfRank, isPlaced, lift, put, rank } from './draft.ts';
import { type FitChoice, fit, fitArriving } from './fit.ts';
import { type Guide, aimAt, costOf, guideFor } from './guide.ts';
import type { Limit } from './limit.ts';
import { anyVisits } from './moves/any-visits.ts';
import type { Move, Situation } from './moves/move.ts';
import { neighboursOfAny, neighboursOfCostly } from './moves/neighbours-in-time.ts';
import { stride } from './problem.ts';

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

const askEvery = 32;
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

/** Takes the chosen out, keeping their rows; returns what they cost. */
function liftAll(draft: Draft, guide: Guide, chosen: Int16Array, count: number, kept: Int16Array): number {
  let cost = 0;
  for (let index = 0; index < count; index += 1) {
    const visit = chosen[index]!;
    cost += costOf(draft, guide, visit);
    const row = visit * stride;
    for (let cell = row; cell < row + stride; cell += 1) kept[cell] = draft.times[cell]!;
    lift(draft, visit);
  }
  return cost;
}

/** A beginning later than need be: who comes too early may be in the way of somebody who can only come then. */
function somewhere({ problem }: Draft, guide: Guide, draw: Draw, visit: number): number {
  if (problem.byTransport[visit] === 1) return 0;
  const earliest = problem.earliest[visit]!;
  return earliest + draw(Math.max(1, Math.min(problem.latest[visit]!, guide.finish) - problem.care[visit]! - earliest));
}

/** Puts the chosen back, one after the other; returns what they cost now. */
function putAll(draft: Draft, guide: Guide, draw: Draw, chosen: Int16Array, count: number, choice: FitChoice): number {
  const { problem, blocks, room, times } = draft;
  let cost = 0;
  for (let index = 0; index < count; index += 1) {
    const visit = chosen[index]!;
    choice.dose = doseChoices[draw(doseChoices.length)]!;
    choice.late = draw(2) === 0;
    const told = draft.told[visit]!;
    if (told >= 0 && fitArriving(problem, blocks, room, visit, told, choice, times)) {
      put(draft, visit);
      cost += costOf(draft, guide, visit);
      continue;
    }
    const from = draw(oneInSoMany) === 0 ? somewhere(draft, guide, draw, visit) : 0;
    const isPut =
      fit(problem, blocks, room, visit, from, problem.ticks, choice, times) ||
      (from > 0 && fit(problem, blocks, room, visit, 0, problem.ticks, choice, times));
    if (isPut) put(draft, visit);
    cost += costOf(draft, guide, visit);
  }
  return cost;
}

function undo(draft: Draft, chosen: Int16Array, count: number, kept: Int16Array): void {
  for (let index = 0; index < count; index += 1) lift(draft, chosen[index]!);
  for (let index = 0; index < count; index += 1) {
    const row = chosen[index]! * stride;
    for (let cell = row; cell < row + stride; cell += 1) draft.times[cell] = kept[cell]!;
    if (isPlaced(draft, chosen[index]!)) put(draft, chosen[index]!);
  }
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
  const kept = new Int16Array(draft.times.length);
  const choice: FitChoice = { dose: CLOSE, late: false };
  let iteration = 0;
  for (; iteration < limit.iterations; iteration += 1) {
    if (iteration % askEvery === 0 && limit.stop?.() === true) break;
    const heat = hottest * (coldest / hottest) ** ((iteration % iterations) / iterations);
    const count = moves[draw(moves.length)]!(situation, 1 + draw(mostLifted), chosen);
    const before = liftAll(draft, guide, chosen, count, kept);
    shuffle(draw, chosen, count);
    const worse = putAll(draft, guide, draw, chosen, count, choice) - before;
    if (worse > 0 && draw(precision) >= precision * Math.exp(-worse / heat)) {
      undo(draft, chosen, count, kept);
      continue;
    }
    const value = rank(draft);
    if (value >= bestRank) continue;
    bestRank = value;
    best = draft.times.slice();
    aimAt(draft, guide, finishOfRank(value));
  }
  become(draft, best);
  return iteration;
}
