/**
 * Three years ahead, many times over: places asked for and waits with their ranges, the chance of keeping to a wait, the places
 * it would take, and plainly whether the wait recovers. The same seed gives the same answer; what-ifs share its draws.
 */
import { type InSteps, allOf } from '../in-steps.ts';
import { type Level, fallingAtEndSays, trendAtEndSays } from './fluid.ts';
import type { DemandInputs, Offer } from './inputs.ts';
import { type Future, play } from './play.ts';

export type LookAheadOptions = {
  readonly weeks: number;
  readonly runs: number;
  readonly seed: number;
  /** Asked before each run; true ends with those made. */
  readonly stop?: () => boolean;
};

/** By week, or by stretches of weeks: the mean and the ranges that hold four in five and nineteen in twenty of the runs. */
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
const halfYear = 26;
const lowest = 0.025;
const low = 0.1;

/** `every` weeks are taken together, each as their mean. */
function rangesOf(runs: readonly Float64Array[], weeks: number, scale: number, every: number): Ranges {
  const ranges = { mean: [], low80: [], high80: [], low95: [], high95: [] } as Record<keyof Ranges, number[]>;
  const column = new Float64Array(runs.length);
  const at = (share: number): number => column[Math.min(runs.length - 1, Math.floor(runs.length * share))] ?? 0;
  for (let week = 0; week < weeks; week += every) {
    const end = Math.min(weeks, week + every);
    runs.forEach((run, index) => (column[index] = (sumOver(run, week, end) * scale) / (end - week)));
    column.sort();
    ranges.mean.push(column.reduce((sum, one) => sum + one, 0) / Math.max(1, runs.length));
    ranges.low80.push(at(low));
    ranges.high80.push(at(1 - low));
    ranges.low95.push(at(lowest));
    ranges.high95.push(at(1 - lowest));
  }
  return ranges;
}

const sumOver = (values: Float64Array, from: number, until = values.length): number =>
  values.subarray(from, until).reduce((sum, value) => sum + value, 0);

/** What many futures of one case say together, by stretches of `every` weeks. */
export function lookAheadFrom(
  futures: readonly Future[],
  offer: Offer,
  { weeks, seed }: LookAheadOptions,
  every = 1,
): LookAhead {
  const from = Math.max(0, weeks - lastYear);
  const count = Math.max(1, futures.length);
  const demandPerWeek = futures.reduce((sum, { demand }) => sum + sumOver(demand, from), 0) / count / (weeks - from);
  const waitingAt = (week: number): number => futures.reduce((sum, { waiting }) => sum + waiting[week]!, 0) / count;
  const end = waitingAt(weeks - 1);
  const level = { waiting: end, demandPerWeek, placesPerWeek: offer.placesPerWeek };
  const growing = futures.filter(({ waiting }) => waiting[weeks - 1]! > waiting[from]!).length / count;
  // Within a week's worth of places a queue breathes; beyond that it is the places that are too few.
  const hasEnough = demandPerWeek < offer.placesPerWeek || end <= offer.placesPerWeek;
  // A burst within the last year lifts its demand above the places, long after the wait has begun to fall.
  const falls = weeks > lastYear && end <= waitingAt(weeks - 1 - halfYear) - offer.placesPerWeek;
  const ranges = (of: keyof Future, scale: number): Ranges =>
    rangesOf(
      futures.map((future) => future[of]),
      weeks,
      scale,
      every,
    );
  return {
    runs: futures.length,
    seed,
    demand: ranges('demand', 1),
    wait: ranges('waiting', 1 / offer.placesPerWeek),
    turnedAway: ranges('turnedAway', 1),
    demandPerWeekInLastYear: demandPerWeek,
    growing,
    recovers: hasEnough || falls,
    says: saysOf(level, waitingAt(from), hasEnough, falls),
  };
}

function saysOf(level: Level, waitingYearBefore: number, hasEnough: boolean, falls: boolean): string {
  if (level.demandPerWeek < level.placesPerWeek) return trendAtEndSays(level, waitingYearBefore);
  if (hasEnough) return 'The places just keep up: nobody waits a week.';
  return falls ? fallingAtEndSays(level) : trendAtEndSays(level, waitingYearBefore);
}

export function lookAhead(inputs: DemandInputs, offer: Offer, options: LookAheadOptions): LookAhead {
  const { weeks, runs, seed, stop } = options;
  const futures: Future[] = [];
  for (let run = 0; run < runs; run += 1) {
    if (stop?.() === true) break;
    futures.push(play(inputs, offer, weeks, seed, run));
  }
  return lookAheadFrom(futures, offer, options);
}

export type WaitTarget = { readonly weeks: number; readonly probability: number };

/** In this future nobody who joins in the last year has to wait longer than the target. */
const keepsTo = ({ waiting }: Future, { placesPerWeek }: Offer, targetWeeks: number): boolean =>
  waiting.subarray(Math.max(0, waiting.length - lastYear)).every((people) => people / placesPerWeek <= targetWeeks);

/** Share of the futures that keep to the target. */
export const shareKeeping = (futures: readonly Future[], offer: Offer, targetWeeks: number): number =>
  futures.filter((future) => keepsTo(future, offer, targetWeeks)).length / Math.max(1, futures.length);

/** The same by its steps: something is yielded after each run, so that whoever asks may do something else, or stop. */
export function* chanceInSteps(
  inputs: DemandInputs,
  offer: Offer,
  targetWeeks: number,
  { weeks, runs, seed }: LookAheadOptions,
): InSteps<number> {
  let kept = 0;
  for (let run = 0; run < runs; run += 1) {
    if (keepsTo(play(inputs, offer, weeks, seed, run), offer, targetWeeks)) kept += 1;
    yield;
  }
  return kept / runs;
}

/** The fewest whole places a week that keep the wait within the target with its probability; undefined beyond `most`. */
export function* placesNeededInSteps(
  inputs: DemandInputs,
  offer: Offer,
  target: WaitTarget,
  options: LookAheadOptions,
  most = 1_000,
): InSteps<number | undefined> {
  const isEnough = function* (placesPerWeek: number): InSteps<boolean> {
    return (yield* chanceInSteps(inputs, { ...offer, placesPerWeek }, target.weeks, options)) >= target.probability;
  };
  let enough = Math.max(1, Math.ceil(offer.placesPerWeek));
  while (!(yield* isEnough(enough))) {
    if (enough >= most) return undefined;
    enough = Math.min(most, enough * 2);
  }
  let tooFew = 0;
  while (enough - tooFew > 1) {
    const middle = (enough + tooFew) >> 1;
    if (yield* isEnough(middle)) enough = middle;
    else tooFew = middle;
  }
  return enough;
}

/** Share of the runs in which nobody who joins in the last year has to wait longer than the target. */
export const chanceOfWait = (
  inputs: DemandInputs,
  offer: Offer,
  targetWeeks: number,
  options: LookAheadOptions,
): number => allOf(chanceInSteps(inputs, offer, targetWeeks, options));

export const placesNeeded = (
  inputs: DemandInputs,
  offer: Offer,
  target: WaitTarget,
  options: LookAheadOptions,
  most?: number,
): number | undefined => allOf(placesNeededInSteps(inputs, offer, target, options, most));
