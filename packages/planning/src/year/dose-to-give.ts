/** The doses a year asks for, with everything chance decides about them: the same whatever the way of working. */
import { bitsFor, streamFor } from '../rehearse/chance.ts';
import { normalQuantile } from '../rehearse/normal.ts';
import type { YearAssumptions } from './assumptions.ts';

/** What a number is drawn for; each has its own, so that nothing shifts anything else. */
const purposes = {
  loads: 1,
  teeth: 2,
  teethDays: 3,
  firstInLine: 4,
  placeFirst: 5,
  office: 6,
  draw: 7,
  comes: 100,
  unwell: 200,
  misses: 300,
  bad: 400,
  seenTo: 500,
} as const;
export type Purpose = keyof typeof purposes;

export type DoseToGive = {
  readonly isFirst: boolean;
  /** The day the unit hears of it: referred, or recalled. Day 0 begins the year that is counted. */
  readonly knownOn: number;
  /** First doses as soon as can be; later ones not before. */
  readonly due: number;
  readonly isFirstInLine: boolean;
  /** Days from which these no longer hold it up. */
  readonly loadedOn: number;
  readonly teethSeenOn: number;
  /** Usual practice only. */
  readonly placeFirst: boolean;
  readonly drawnOn: number;
  /** From 0 up to 1: the n-th time something is asked of chance for this dose. */
  readonly chance: (purpose: Purpose, time?: number) => number;
};

export type YearDemand = {
  readonly referralsPerWeek: number;
  readonly laterPerWeek: number;
  /** Days until a result has been looked at. */
  readonly resultDays: number;
};

const daysPerWeek = 7;
const span = 2 ** 32;

function doseFrom(
  stream: number,
  isFirst: boolean,
  on: number,
  { resultDays }: YearDemand,
  given: YearAssumptions,
): DoseToGive {
  const chance = (purpose: Purpose, time = 0): number => (bitsFor(stream, purposes[purpose] + time) + 0.5) / span;
  const [least, most] = given.teethDays;
  const due = isFirst ? on : on + given.recallDays;
  const { mean, deviation } = given.drawnBeforeDue;
  const before = Math.min(given.recallDays, Math.max(daysPerWeek, mean + deviation * normalQuantile(chance('draw'))));
  const office = 1 + Math.floor(chance('office') * daysPerWeek);
  return {
    isFirst,
    knownOn: on,
    due,
    isFirstInLine: isFirst && chance('firstInLine') < given.firstInLine,
    loadedOn: isFirst && chance('loads') < given.loads ? on + office + resultDays + given.loadingDays : on,
    teethSeenOn:
      isFirst && chance('teeth') < given.teeth ? on + Math.round(least + (most - least) * chance('teethDays')) : on,
    placeFirst: chance('placeFirst') < given.placeFirst,
    drawnOn: isFirst ? on + office : Math.round(due - before),
    chance,
  };
}

/** Days between arrivals are exponential; first and later doses each have a stream of their own. */
export function dosesOfYear(
  seed: number,
  demand: YearDemand,
  from: number,
  until: number,
  given: YearAssumptions,
): DoseToGive[] {
  const doses: DoseToGive[] = [];
  for (const [series, perWeek] of [demand.referralsPerWeek, demand.laterPerWeek].entries()) {
    if (perWeek <= 0) continue;
    const arrivals = streamFor(seed, series);
    let count = 0;
    let at = from;
    for (;;) {
      at += (-Math.log((bitsFor(arrivals, count) + 0.5) / span) / perWeek) * daysPerWeek;
      if (at >= until) break;
      doses.push(doseFrom(streamFor(bitsFor(arrivals, -1), count), series === 0, Math.floor(at), demand, given));
      count += 1;
    }
  }
  return doses.toSorted((a, b) => a.knownOn - b.knownOn);
}
