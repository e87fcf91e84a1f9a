/**
 * The days on which a unit's services work: when bloods can be taken, what counts as a working day, when sessions run.
 * It is the unit's settings, handed to the engine as data.
 */
import { type Day, addDays, weekday } from './day.ts';

export type UnitCalendar = {
  /** ISO weekdays (1 = Monday) on which bloods can be taken. */
  readonly bloodWeekdays: readonly number[];
  /** ISO weekdays on which the unit holds infusion sessions. */
  readonly sessionWeekdays: readonly number[];
  /** ISO weekdays on which somebody answers the advice line and rings people; undefined: nobody has said, and any open day counts. */
  readonly adviceLineWeekdays?: readonly number[] | undefined;
  /** Dates on which nothing happens: public holidays, closures. */
  readonly closedDays: readonly Day[];
};

/** Every day is a blood day and a session day, nothing ever closes: the calendar of the worked cases. */
export const everyDay: UnitCalendar = {
  bloodWeekdays: [1, 2, 3, 4, 5, 6, 7],
  sessionWeekdays: [1, 2, 3, 4, 5, 6, 7],
  closedDays: [],
};

const isOpen = (calendar: UnitCalendar, on: Day): boolean => !calendar.closedDays.includes(on);

export const isBloodDay = (calendar: UnitCalendar, on: Day): boolean =>
  calendar.bloodWeekdays.includes(weekday(on)) && isOpen(calendar, on);

export const isSessionDay = (calendar: UnitCalendar, on: Day): boolean =>
  calendar.sessionWeekdays.includes(weekday(on)) && isOpen(calendar, on);

export const isAdviceLineDay = (calendar: UnitCalendar, on: Day): boolean =>
  (calendar.adviceLineWeekdays?.includes(weekday(on)) ?? true) && isOpen(calendar, on);

const isWorkingDay = (calendar: UnitCalendar, on: Day): boolean => weekday(on) <= 5 && isOpen(calendar, on);

/** The longest stretch of closed days the calendar is searched across. */
const SEARCH_DAYS = 400;

function search(from: Day, step: 1 | -1, holds: (on: Day) => boolean, limit: Day | undefined): Day | undefined {
  for (let offset = 0; offset <= SEARCH_DAYS; offset += 1) {
    const candidate = addDays(from, offset * step);
    if (limit !== undefined && (step === 1 ? candidate > limit : candidate < limit)) return undefined;
    if (holds(candidate)) return candidate;
  }
  return undefined;
}

export const firstBloodDay = (calendar: UnitCalendar, from: Day, limit?: Day): Day | undefined =>
  search(from, 1, (on) => isBloodDay(calendar, on), limit);
export const lastBloodDay = (calendar: UnitCalendar, until: Day, limit?: Day): Day | undefined =>
  search(until, -1, (on) => isBloodDay(calendar, on), limit);
export const firstSessionDay = (calendar: UnitCalendar, from: Day, limit?: Day): Day | undefined =>
  search(from, 1, (on) => isSessionDay(calendar, on), limit);
export const lastSessionDay = (calendar: UnitCalendar, until: Day, limit?: Day): Day | undefined =>
  search(until, -1, (on) => isSessionDay(calendar, on), limit);

/** A line that never opens would let nobody be asked: then the day itself. */
export const nextAdviceLineDay = (calendar: UnitCalendar, from: Day): Day =>
  search(from, 1, (on) => isAdviceLineDay(calendar, on), undefined) ?? from;

export type ResultDays = { readonly days: number; readonly counted: 'calendar days' | 'working days' };

/** The first day on which a sample taken on `drawn` may be used. */
export function usableFrom(calendar: UnitCalendar, drawn: Day, result: ResultDays): Day {
  if (result.counted === 'calendar days') return addDays(drawn, result.days);
  let on = drawn;
  for (let left = result.days; left > 0;) {
    on = addDays(on, 1);
    if (isWorkingDay(calendar, on)) left -= 1;
  }
  return on;
}

/** The last day on which a sample could be taken and still be usable on `needed`. */
export function lastDrawFor(calendar: UnitCalendar, needed: Day, result: ResultDays, limit?: Day): Day | undefined {
  return search(needed, -1, (on) => isBloodDay(calendar, on) && usableFrom(calendar, on, result) <= needed, limit);
}
