/**
 * Three years ahead, many times over: places asked for and waits with their ranges, the chance of keeping to a wait, the places
 * it would take, and plainly whether the wait recovers. The same seed gives the same answer; what-ifs share its draws.
 */
import { trendSays } from './fluid.ts';
import type { DemandInputs, Offer } from './inputs.ts';
import { type Future, play } from './play.ts';

export type LookAheadOptions = {
  readonly weeks: number;
  readonly runs: number;
  readonly seed: number;
  /** Asked before each run; true ends with those made. */
  readonly stop?: () => boolean;
};

/** By week: the mean and the ranges that hold four in five and nineteen in twenty of the runs. */
export type Ranges = {
  readonly mean: readonly number[];
  readonly low80: readonly number[];
  readonly high80: readonly number[];
  readonly low95: readonly number[];
  readonly high95: readonly number[];
};

export type LookAhead = {
  readonly runs: number;
  readonly seed: number;
  readonly demand: Ranges;
  /** Weeks that somebody joining in that week waits. */
  readonly wait: Ranges;
  readonly turnedAway: Ranges;
  readonly demandPerWeekInLastYear: number;
  /** The share of runs whose wait grew over the last year: not chance, but too few places. */
  readonly growing: number;
  readonly recovers: boolean;
  readonly says: string;
};

const lastYear = 52;
const lowest = 0.025;
const low = 0.1;

function rangesOf(runs: readonly Float64Array[], weeks: number, scale: number): Ranges {
  const ranges = { mean: [], low80: [], high80: [], low95: [], high95: [] } as Record<keyof Ranges, number[]>;
  const column = new Float64Array(runs.length);
  const at = (share: number): number => column[Math.min(runs.length - 1, Math.floor(runs.length * share))] ?? 0;
  for (let week = 0; week < weeks; week += 1) {
    runs.forEach((run, index) => (column[index] = run[week]! * scale));
    column.sort();
    ranges.mean.push(column.reduce((sum, one) => sum + one, 0) / Math.max(1, runs.length));
    ranges.low80.push(at(low));
    ranges.high80.push(at(1 - low));
    ranges.low95.push(at(lowest));
    ranges.high95.push(at(1 - lowest));
  }
  return ranges;
}

const sumOver = (values: Float64Array, from: number): number =>
  values.subarray(from).reduce((sum, value) => sum + value, 0);

export function lookAhead(inputs: DemandInputs, offer: Offer, options: LookAheadOptions): LookAhead {
  const { weeks, runs, seed, stop } = options;
  const futures: Future[] = [];
  for (let run = 0; run < runs; run += 1) {
    if (stop?.() === true) break;
    futures.push(play(inputs, offer, weeks, seed, run));
  }
  const from = Math.max(0, weeks - lastYear);
  const count = Math.max(1, futures.length);
  const demandPerWeek = futures.reduce((sum, { demand }) => sum + sumOver(demand, from), 0) / count / (weeks - from);
  const waitingAt = (week: number): number => futures.reduce((sum, { waiting }) => sum + waiting[week]!, 0) / count;
  const end = waitingAt(weeks - 1);
  const level = { waiting: end, demandPerWeek, placesPerWeek: offer.placesPerWeek };
  const growing = futures.filter(({ waiting }) => waiting[weeks - 1]! > waiting[from]!).length / count;
  // Within a week's worth of places a queue breathes; beyond that it is the places that are too few.
  const recovers = demandPerWeek < offer.placesPerWeek || end <= offer.placesPerWeek;
  return {
    runs: futures.length,
    seed,
    demand: rangesOf(
      futures.map(({ demand }) => demand),
      weeks,
      1,
    ),
    wait: rangesOf(
      futures.map(({ waiting }) => waiting),
      weeks,
      1 / offer.placesPerWeek,
    ),
    turnedAway: rangesOf(
      futures.map(({ turnedAway }) => turnedAway),
      weeks,
      1,
    ),
    demandPerWeekInLastYear: demandPerWeek,
    growing,
    recovers,
    says:
      recovers && demandPerWeek >= offer.placesPerWeek
        ? 'The places just keep up: nobody waits a week.'
        : trendSays(level),
  };
}

export type WaitTarget = { readonly weeks: number; readonly probability: number };

/** Share of the runs in which nobody who joins in the last year has to wait longer than the target. */
export function chanceOfWait(inputs: DemandInputs, offer: Offer, target: number, options: LookAheadOptions): number {
  const { weeks, runs, seed } = options;
  const from = Math.max(0, weeks - lastYear);
  let kept = 0;
  for (let run = 0; run < runs; run += 1) {
    const { waiting } = play(inputs, offer, weeks, seed, run);
    if (waiting.subarray(from).every((people) => people / offer.placesPerWeek <= target)) kept += 1;
  }
  return kept / runs;
}

/** The fewest whole places a week that keep the wait within the target with its probability; undefined beyond `most`. */
export function placesNeeded(
  inputs: DemandInputs,
  offer: Offer,
  target: WaitTarget,
  options: LookAheadOptions,
  most = 1_000,
): number | undefined {
  const isEnough = (placesPerWeek: number): boolean =>
    chanceOfWait(inputs, { ...offer, placesPerWeek }, target.weeks, options) >= target.probability;
  let enough = Math.max(1, Math.ceil(offer.placesPerWeek));
  while (!isEnough(enough)) {
    if (enough >= most) return undefined;
    enough = Math.min(most, enough * 2);
  }
  let tooFew = 0;
  while (enough - tooFew > 1) {
    const middle = (enough + tooFew) >> 1;
    if (isEnough(middle)) enough = middle;
    else tooFew = middle;
  }
  return enough;
}
