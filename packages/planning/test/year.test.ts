// A rehearsed year: what may never happen under any way of working, and what must not differ between them.
import { type Day as CalendarDay, day as calendarDay, everyDay } from '@twelvemonth/clinical';
import { describe, expect, it } from 'vitest';
import { byWindows } from '../src/year/by-windows.ts';
import { type YearAssumptions, yearAssumptions } from '../src/year/assumptions.ts';
import { type CompareOptions, compareWays } from '../src/year/compare-ways.ts';
import { dosesOfYear } from '../src/year/dose-to-give.ts';
import { type YearUnit, playYear } from '../src/year/play-year.ts';
import { usualPractice } from '../src/year/usual-practice.ts';
import { measuresOf } from '../src/year/year-measures.ts';
import { sharedDay } from './oracle/days.ts';

const begins: CalendarDay = calendarDay('2026-11-30');
const span = { from: -182, until: 546 };
const demand = { referralsPerWeek: 1, laterPerWeek: 2, resultDays: 3 };

const unit = (given: YearAssumptions = yearAssumptions, validDays = 56): YearUnit => ({
  name: 'Thornbeck',
  calendar: { ...everyDay, sessionWeekdays: [3], bloodWeekdays: [1, 2, 3, 4, 5] },
  begins,
  places: 4,
  noticeDays: 3,
  samples: { validDays, resultDays: demand.resultDays, given },
  nurseMinutes: 1020,
  chairMinutes: 3000,
  mostFirstVisits: 3,
  reservedPercent: 10,
  kinds: [
    { name: 'first infusion', nurseMinutes: 40, chairMinutes: 45, isFirst: true },
    { name: 'later infusion', nurseMinutes: 40, chairMinutes: 45, isFirst: false },
  ],
});
const ways = [usualPractice(yearAssumptions.seenTo), byWindows(yearAssumptions.seenTo)];
const nothingGoesWrong: YearAssumptions = {
  ...yearAssumptions,
  loads: 0,
  teeth: 0,
  doesNotCome: 0,
  unwell: 0,
  missesDraw: 0,
  badResult: 0,
};

const seeds = [1, 2];
const played = (seed: number, way: (typeof ways)[number], of = unit()) =>
  playYear(of, dosesOfYear(seed, demand, span.from, span.until, of.samples.given), way, span);
const years = new Map(ways.map((way) => [way, seeds.map((seed) => played(seed, way))]));

describe.each(ways.map((way) => [way.name, way] as const))('a year under %s', (_, way) => {
  const own = years.get(way) ?? [];
  const courses = own.flatMap((year) => year.courses);

  it('gives nobody a dose early, unloaded, with teeth to be seen to or without bloods in date', () => {
    const given = courses.flatMap((course) => (course.givenOn === undefined ? [] : [{ course, on: course.givenOn }]));
    expect(given.length).toBeGreaterThan(100);
    for (const { course, on } of given) {
      expect(on).toBeGreaterThanOrEqual(Math.max(course.dose.due, course.dose.loadedOn, course.dose.teethSeenOn));
      const last = course.drawnOn.at(-1) ?? Infinity;
      expect(on - last).toBeGreaterThanOrEqual(demand.resultDays);
      expect(on - last).toBeLessThanOrEqual(56);
    }
  });

  it('never has more people on a session than places', () => {
    for (const { seen } of own.flatMap(({ sessions }) => sessions)) expect(seen.length).toBeLessThanOrEqual(4);
  });

  it('turns nobody away and draws nothing twice when nothing goes wrong and bloods last', () => {
    const of = unit(nothingGoesWrong, 400);
    expect(measuresOf(played(1, way, of).courses, nothingGoesWrong)).toMatchObject({
      foreseeableTurnAways: 0,
      otherTurnAways: 0,
      didNotCome: 0,
      repeatDraws: 0,
      overdue: 0,
    });
  });

  it('as many do not come as the binomial distribution says', () => {
    // Every visit is a trial of its own: 6 in 100, within four standard deviations.
    let [visits, absent] = [0, 0];
    for (const { givenOn, turnedAway, didNotCome } of courses) {
      visits += turnedAway.length + didNotCome.length + (givenOn === undefined ? 0 : 1);
      absent += didNotCome.length;
    }
    const expected = visits * yearAssumptions.doesNotCome;
    expect(Math.abs(absent - expected)).toBeLessThan(4 * Math.sqrt(expected * (1 - yearAssumptions.doesNotCome)));
  });
});

describe('ways of working compared', () => {
  const { day } = sharedDay('A08-1');
  const compared = (options: CompareOptions) =>
    compareWays({ year: unit(), day, arriveAt: [0, 4, 8, 12, 16], demand }, options);

  const first = compared({ seed: 1 });

  it('the same seed gives the same bytes, another seed another year', () => {
    expect(JSON.stringify(compared({ seed: 1 }))).toBe(JSON.stringify(first));
    expect(JSON.stringify(compared({ seed: 2 }))).not.toBe(JSON.stringify(first));
  });

  it('where more are asked for than fit, more doses fall overdue, and it is not hidden', () => {
    const crowded = compared({ seed: 1, load: 115 });
    expect(crowded.asked).toBeCloseTo(115, 6);
    crowded.ways.forEach(({ result }, way) => expect(result.overdue).toBeGreaterThan(first.ways[way]!.result.overdue));
  });
});
