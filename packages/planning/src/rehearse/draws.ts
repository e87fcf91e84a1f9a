/** One rehearsed day's draws: who comes and when, how long each step takes, who is sent home. */
import type { Day } from '../day/day.ts';
import type { Plan } from '../plan/plan.ts';
import { bitsFor, streamFor, type Table, tableOf, thresholdOf, valueIn, withMean } from './chance.ts';
import type { Chances } from './chances.ts';
import { courseStride } from './course.ts';
import { normalQuantile } from './normal.ts';
import type { Run } from './serve.ts';

/** Draws a visit may use; each has its number, so that none moves when another is not needed. */
const perVisit = 32;
const COMES = 0;
const LATE = 1;
const HOME = 2;
const CANNULA = 3;
const REACTION = 4;
const NURSE_MISSING = 5;
const FIRST_STEP = 6;

const lengthOf = (sigma: number): Table =>
  withMean(
    tableOf((probability) => Math.exp(sigma * normalQuantile(probability))),
    1,
  );

export type Draws = {
  /** Fills a run with the draws of one day. */
  readonly fill: (run: Run, seed: number, day: number) => void;
  readonly isNurseMissing: (seed: number, day: number) => boolean;
};

export function drawsFor(day: Day, plan: Plan, chances: Chances): Draws {
  const { visits, minutesPerTick } = day;
  const standard = tableOf(normalQuantile);
  const { spread, lateness } = chances;
  const lengths = {
    whole: lengthOf(spread.whole),
    shared: lengthOf(spread.shared),
    none: lengthOf(spread.none),
    dose: lengthOf(spread.dose),
  };
  const cells = visits.length * courseStride;
  const mean = new Float64Array(cells);
  const table: Table[] = [];
  visits.forEach(({ steps, dose }, visit) => {
    const row = visit * courseStride;
    steps.forEach((step, index) => {
      mean[row + index] = step.ticks * minutesPerTick;
      table[row + index] = lengths[step.nurse];
    });
    const ticks = dose === null ? [0, 0] : [dose.preparationTicks, dose.secondCheckTicks];
    ticks.forEach((one, index) => {
      mean[row + courseStride - 2 + index] = one * minutesPerTick;
      table[row + courseStride - 2 + index] = lengths.dose;
    });
  });
  const told = visits.map((_, visit) => (plan[visit]?.arrives ?? Number.POSITIVE_INFINITY) * minutesPerTick);
  const away = thresholdOf(chances.doesNotCome);
  const home = thresholdOf(chances.putOff);
  const fails = thresholdOf(chances.cannulaFails.probability);
  const reacts = thresholdOf(chances.reaction.probability);
  const missing = thresholdOf(chances.nurseMissing);

  function fillVisit(run: Run, visit: number, stream: number): void {
    const { steps, chair, arrival, dose } = visits[visit]!;
    const row = visit * courseStride;
    const counter = visit * perVisit;
    const isAway = told[visit] === Number.POSITIVE_INFINITY || bitsFor(stream, counter + COMES) < away;
    if (isAway) {
      run.arrival[visit] = Number.POSITIVE_INFINITY;
      return;
    }
    // Who is brought comes when the transport does.
    const late =
      arrival === 'transport'
        ? 0
        : lateness.mean + lateness.deviation * valueIn(standard, bitsFor(stream, counter + LATE));
    run.arrival[visit] = Math.max(0, told[visit]! + late);
    const isHome = chair !== null && chair.from > 0 && bitsFor(stream, counter + HOME) < home;
    run.homeAfter[visit] = isHome ? chair.from - 1 : -1;
    for (let step = 0; step < steps.length; step += 1)
      run.minutes[row + step] =
        mean[row + step]! * valueIn(table[row + step]!, bitsFor(stream, counter + FIRST_STEP + step));
    if (dose !== null)
      for (let cell = row + courseStride - 2, index = 0; index < 2; cell += 1, index += 1)
        run.minutes[cell] = mean[cell]! * valueIn(table[cell]!, bitsFor(stream, counter + perVisit - 2 + index));
    if (chair !== null && bitsFor(stream, counter + CANNULA) < fails)
      run.minutes[row + chair.from]! += chances.cannulaFails.moreMinutes;
    if (chair !== null && bitsFor(stream, counter + REACTION) < reacts)
      run.minutes[row + chair.to]! += chances.reaction.moreMinutes;
  }

  return {
    fill(run, seed, rehearsed) {
      const stream = streamFor(seed, rehearsed);
      for (let visit = 0; visit < visits.length; visit += 1) fillVisit(run, visit, stream);
    },
    isNurseMissing: (seed, rehearsed) =>
      missing > 0 && bitsFor(streamFor(seed, rehearsed), visits.length * perVisit + NURSE_MISSING) < missing,
  };
}
