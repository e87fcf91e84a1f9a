/** The same year under several ways of working, over several seeds: the same people, the same luck. */
import { isSessionDay } from '@twelvemonth/clinical';
import type { Day } from '../day/day.ts';
import { type Chances, usualChances } from '../rehearse/chances.ts';
import { bitsFor } from '../rehearse/chance.ts';
import { byWindows } from './by-windows.ts';
import { dosesOfYear } from './dose-to-give.ts';
import { type WayOfWorking, type YearUnit, dateOf, playYear } from './play-year.ts';
import { type Arranging, sessionEnds } from './session-ends.ts';
import { usualPractice } from './usual-practice.ts';
import { type YearMeasures, measuresOf, yearDays } from './year-measures.ts';

export type UnitOfYear = {
  readonly year: YearUnit;
  /** A session with one first and one later visit. */
  readonly day: Day;
  /** Ticks of the day at which its places arrive. */
  readonly arriveAt: readonly number[];
  readonly demand: { readonly referralsPerWeek: number; readonly laterPerWeek: number };
};

export type WayResult = YearMeasures & {
  /** Sessions with somebody on them, and of those how many run past closing. */
  readonly sessions: number;
  readonly overruns: number;
  readonly meanStayMinutes: number;
};

export type ComparedWays = {
  readonly unit: string;
  /** Of the places there are in a year, the share that is asked for, in hundredths. */
  readonly asked: number;
  readonly seed: number;
  readonly ways: readonly { readonly name: string; readonly result: WayResult }[];
};

export type CompareOptions = {
  readonly seed: number;
  /** As many people as ask for this share of the places, in hundredths; undefined: as many as the notes say. */
  readonly load?: number | undefined;
};

/** Played before and after the year that is counted: for waits to settle, and to follow everyone referred in it. */
const settlingDays = 182;
const percent = 100;
const daysPerWeek = 7;

/** Who comes and is well has been settled by the year; in the sessions only minutes are left to chance. */
const minutesOnly: Chances = { ...usualChances, doesNotCome: 0, putOff: 0 };

const waysOf = ({ samples }: YearUnit): readonly { readonly way: WayOfWorking; readonly arranging: Arranging }[] => [
  { way: usualPractice(samples.given.seenTo), arranging: 'places in their order' },
  { way: byWindows(samples.given.seenTo), arranging: 'a plan of the day' },
];

/** Each unit has people of its own. */
function numberOf(name: string): number {
  let sum = 0;
  for (let at = 0; at < name.length; at += 1) sum += name.codePointAt(at) ?? 0;
  return sum;
}

function placesPerWeek(year: YearUnit): number {
  let days = 0;
  for (let on = 0; on < yearDays; on += 1) if (isSessionDay(year.calendar, dateOf(year, on))) days += 1;
  return (days * year.places * daysPerWeek) / yearDays;
}

export function compareWays({ year, day, arriveAt, demand }: UnitOfYear, { seed, load }: CompareOptions): ComparedWays {
  const places = placesPerWeek(year);
  const perWeek = demand.referralsPerWeek + demand.laterPerWeek;
  const times = load === undefined || perWeek === 0 ? 1 : ((load / percent) * places) / perWeek;
  const { given, resultDays } = year.samples;
  const asked = {
    referralsPerWeek: demand.referralsPerWeek * times,
    laterPerWeek: demand.laterPerWeek * times,
    resultDays,
  };
  const span = { from: -settlingDays, until: yearDays + settlingDays };
  const doses = dosesOfYear(bitsFor(seed, numberOf(year.name)), asked, span.from, span.until, given);
  return {
    unit: year.name,
    asked: (percent * perWeek * times) / places,
    seed,
    ways: waysOf(year).map(({ way, arranging }) => {
      const { sessions, courses } = playYear(year, doses, way, span);
      const held = sessions
        .filter(({ on, seen }) => on >= 0 && on < yearDays && seen.length > 0)
        .map(({ on, seen }) => ({ key: on, visits: seen.map(({ dose }) => day.visits[dose.isFirst ? 0 : 1]!) }));
      const ends = sessionEnds(day, held, { arranging, arriveAt, chances: minutesOnly, seed });
      return { name: way.name, result: { ...measuresOf(courses, given), ...ends } };
    }),
  };
}
