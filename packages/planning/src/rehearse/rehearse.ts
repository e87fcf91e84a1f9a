/** A planned day played many times: when it ends, how long people wait and for what. The same seed gives the same bits. */
import type { Day } from '../day/day.ts';
import type { Plan } from '../plan/plan.ts';
import type { Chances } from './chances.ts';
import { courseOf } from './course.ts';
import { drawsFor } from './draws.ts';
import { CHAIR, DOSE, NURSE, runFor, serverFor } from './serve.ts';

export type RehearseOptions = {
  readonly seed: number;
  /** Days played. */
  readonly days: number;
  /** Asked before each hundred days; true ends the rehearsal with those played. */
  readonly stop?: () => boolean;
};

export type Spread = { readonly median: number; readonly ninthDecile: number; readonly mean: number };

export type Rehearsal = {
  readonly seed: number;
  readonly days: number;
  /** Minutes from the beginning of the day to the last leaving, in order of size: for a picture, or any quantile. */
  readonly finishes: Float64Array;
  readonly finish: Spread;
  /** Share of the days that end by the time the unit closes. */
  readonly onTime: number;
  /** Minutes from coming to leaving, of all who came. */
  readonly stay: Spread;
  /** Minutes waited in all, a day, by what for. */
  readonly waitedFor: { readonly nurse: number; readonly chair: number; readonly dose: number };
  /** What people wait for most; null when nobody waits. */
  readonly bottleneck: 'nurse' | 'chair' | 'dose' | null;
  readonly attended: number;
  /** Doses a day that stood too long and were made again. */
  readonly remade: number;
  /** People in the unit, on average, at each half hour. */
  readonly present: readonly number[];
};

const halfHour = 30;
const askEvery = 100;

const quantile = (sorted: Float64Array, share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0;

const spreadOf = (sorted: Float64Array): Spread => ({
  median: quantile(sorted, 0.5),
  ninthDecile: quantile(sorted, 0.9),
  mean: sorted.length === 0 ? 0 : sorted.reduce((sum, one) => sum + one, 0) / sorted.length,
});

/** Stays in whole minutes, counted: enough for quantiles, whatever the number of days. */
const longestStay = 1_000;

type Tally = { readonly stays: Float64Array; readonly present: Float64Array; count: number; minutes: number };

function tallyUp(tally: Tally, arrival: Float64Array, leaves: Float64Array): void {
  for (let visit = 0; visit < arrival.length; visit += 1) {
    const left = leaves[visit]!;
    if (Number.isNaN(left)) continue;
    const came = arrival[visit]!;
    tally.count += 1;
    tally.minutes += left - came;
    tally.stays[Math.min(longestStay, Math.round(left - came))]! += 1;
    const last = Math.min(tally.present.length - 1, Math.floor(left / halfHour));
    for (let at = Math.ceil(came / halfHour); at <= last; at += 1) tally.present[at]! += 1;
  }
}

function stayAt({ stays, count }: Tally, share: number): number {
  let left = count * share;
  for (let minutes = 0; minutes <= longestStay; minutes += 1) {
    left -= stays[minutes]!;
    if (left < 0) return minutes;
  }
  return 0;
}

export function rehearse(day: Day, plan: Plan, chances: Chances, { seed, days, stop }: RehearseOptions): Rehearsal {
  const course = courseOf(day);
  const serve = serverFor(course);
  const nurses = day.nurses.map((count) => (count === 0 ? 0 : Math.max(1, count - 1)));
  const serveShort = serverFor(courseOf({ ...day, nurses }));
  const draws = drawsFor(day, plan, chances);
  const run = runFor(course);
  const finishes = new Float64Array(days);
  const waited = [0, 0, 0];
  const tally: Tally = {
    stays: new Float64Array(longestStay + 1),
    present: new Float64Array(Math.ceil((day.ticks * day.minutesPerTick) / halfHour) + 1),
    count: 0,
    minutes: 0,
  };
  let remade = 0;
  let played = 0;
  for (; played < days; played += 1) {
    if (played % askEvery === 0 && stop?.() === true) break;
    draws.fill(run, seed, played);
    (draws.isNurseMissing(seed, played) ? serveShort : serve)(run);
    finishes[played] = run.finish;
    for (let cause = 0; cause < waited.length; cause += 1) waited[cause]! += run.waited[cause]!;
    remade += run.remade;
    tallyUp(tally, run.arrival, run.leaves);
  }
  const sorted = finishes.subarray(0, played).toSorted();
  const closes = day.closes * day.minutesPerTick;
  const each = (sum: number): number => (played === 0 ? 0 : sum / played);
  const waitedFor = { nurse: each(waited[NURSE]!), chair: each(waited[CHAIR]!), dose: each(waited[DOSE]!) };
  const causes = ['nurse', 'chair', 'dose'] as const;
  const worst = causes.toSorted((a, b) => waitedFor[b] - waitedFor[a])[0] ?? 'nurse';
  return {
    seed,
    days: played,
    finishes: sorted,
    finish: spreadOf(sorted),
    onTime: each(sorted.reduce((count, one) => count + (one <= closes ? 1 : 0), 0)),
    stay: {
      median: stayAt(tally, 0.5),
      ninthDecile: stayAt(tally, 0.9),
      mean: tally.count === 0 ? 0 : tally.minutes / tally.count,
    },
    waitedFor,
    bottleneck: waitedFor[worst] > 0 ? worst : null,
    attended: each(tally.count),
    remade: each(remade),
    present: Array.from(tally.present, each),
  };
}
