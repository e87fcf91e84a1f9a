/**
 * Rehearsing a day: the chain of visits that the general-purpose simulation libraries were given (24 people, 6 chairs, 4
 * nurses, log-normal steps, 8 in 100 do not come), played by our own. `npm run bench -- rehearse-day`. SimPy and simscript
 * are run beside it where they are at hand; a mean visit of 69.4 to 69.7 minutes is what the libraries agree on.
 */
import { readFileSync } from 'node:fs';
import {
  type Course,
  type Run,
  bitsFor,
  normalQuantile,
  planDay,
  readDay,
  rehearse,
  runFor,
  serverFor,
  streamFor,
  tableOf,
  thresholdOf,
  usualChances,
  valueIn,
  withMean,
} from '../packages/planning/src/index.ts';
import type { Bench, Figure } from './figure.ts';
import { simpyVisitsPerSecond, simscriptVisitsPerSecond } from './peers/simulations.ts';
import { timed } from './processor-time.ts';

const people = 24;
const stride = 16;
const days = 20_000;
const rounds = 5;
/** Minutes of observations, checklist, cannula, infusion, removal, watch (for three in ten), leaving; preparation, check. */
const means = [10, 10, 10, 20, 5, 30, 5];
const needsNurse = [1, 1, 1, 0, 1, 0, 1];
const watch = 5;
const dose = [10, 5];

function course(): Course {
  const all = (value: number): Int8Array => new Int8Array(people).fill(value);
  const units = new Uint8Array(people * stride);
  for (let visit = 0; visit < people; visit += 1) units.set(needsNurse, visit * stride);
  return {
    visits: people,
    stride,
    stepCount: new Uint8Array(people).fill(means.length),
    units,
    chairFrom: all(2),
    chairTo: all(4),
    watch: all(-1),
    doseBefore: all(3),
    keeps: new Float64Array(people).fill(Number.POSITIVE_INFINITY),
    chairs: 6,
    watchPlaces: 0,
    preparers: 1,
    checkers: 1,
    nurseUnits: 4,
    changeAt: new Float64Array(0),
    changeBy: new Int16Array(0),
  };
}

const standard = tableOf(normalQuantile);
const length = withMean(
  tableOf((probability) => Math.exp(0.3 * normalQuantile(probability))),
  1,
);
const stays = thresholdOf(0.3);
const away = thresholdOf(0.08);

function drawDay(run: Run, day: number): void {
  const stream = streamFor(1, day);
  for (let visit = 0, counter = 0; visit < people; visit += 1, counter += stride) {
    if (bitsFor(stream, counter) < away) {
      run.arrival[visit] = Number.POSITIVE_INFINITY;
      continue;
    }
    const late = 8 * valueIn(standard, bitsFor(stream, counter + 1)) - 2;
    run.arrival[visit] = Math.max(0, (visit * 390) / people + late);
    const row = visit * stride;
    for (let step = 0; step < means.length; step += 1) {
      const bits = bitsFor(stream, counter + 2 + step);
      run.minutes[row + step] = step === watch ? (bits < stays ? 30 : 0) : means[step]! * valueIn(length, bits);
    }
    run.minutes[row + stride - 2] = dose[0]! * valueIn(length, bitsFor(stream, counter + 10));
    run.minutes[row + stride - 1] = dose[1]! * valueIn(length, bitsFor(stream, counter + 11));
  }
}

type Played = { readonly visits: number; readonly minutes: number };

function playDays(count: number): Played {
  const run = runFor(course());
  const serve = serverFor(course());
  let visits = 0;
  let minutes = 0;
  for (let day = 0; day < count; day += 1) {
    drawDay(run, day);
    serve(run);
    visits += run.attended;
    for (let visit = 0; visit < people; visit += 1) {
      const stay = run.leaves[visit]! - run.arrival[visit]!;
      if (stay > 0) minutes += stay;
    }
  }
  return { visits, minutes };
}

/** A plan of one of the shared days rehearsed through the public call. */
function rehearsalMilliseconds(): number {
  const read = readDay(readFileSync(new URL('days/A24-1.json', import.meta.url), 'utf8'));
  if (!read.ok) throw new Error(read.problems[0]?.says);
  const { plan } = planDay(read.day, { seed: 1, limit: { iterations: 5_000 } });
  const options = { seed: 1, days: 2_000 };
  rehearse(read.day, plan, usualChances, options);
  return Math.min(
    ...Array.from({ length: rounds }, () => timed(() => rehearse(read.day, plan, usualChances, options)).milliseconds),
  );
}

export const bench: Bench = async () => {
  const all = Array.from({ length: rounds }, () => timed(() => playDays(days)));
  const [one] = all;
  if (one === undefined || all.some(({ result }) => result.minutes !== one.result.minutes))
    throw new Error('one seed, two results');
  const perSecond = Math.max(...all.map(({ result, milliseconds }) => (result.visits / milliseconds) * 1_000));
  const figures: Figure[] = [
    {
      what: `visits played a second of processor time, mean ${(one.result.minutes / one.result.visits).toFixed(2)} minutes, equal bits in ${rounds} runs`,
      value: perSecond,
      unit: 'visits/s/core',
      beside: 'goal: 2.5 million',
    },
    { what: 'a planned day of 24 people rehearsed 2,000 times', value: rehearsalMilliseconds(), unit: 'ms' },
  ];
  for (const { name, perSecond: other, elsewhere, goal } of [
    { name: 'SimPy', perSecond: simpyVisitsPerSecond(), elsewhere: '32,700', goal: 75 },
    { name: 'simscript', perSecond: simscriptVisitsPerSecond(), elsewhere: '7,140', goal: 350 },
  ]) {
    if (other === undefined)
      console.log(`  ${name} is absent: its ${elsewhere} visits a second were measured elsewhere`);
    else
      figures.push({
        what: `times the visits of ${name}`,
        value: perSecond / other,
        unit: 'times',
        beside: `${other} a second of processor time; goal: ${goal}`,
      });
  }
  return figures;
};
