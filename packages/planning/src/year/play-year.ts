/**
 * A year of one unit's sessions, day by day, under a way of working. What people bring with them is the same under each; only
 * where they are booked, when they are drawn and how much of what is known ahead is seen to differ.
 */
import {
  type Day as CalendarDay,
  type UnitCalendar,
  addDays,
  isBloodDay,
  isSessionDay,
  weekday,
} from '@twelvemonth/clinical';
import type { VisitKind } from '../fill/request.ts';
import { CourseOfDose, type SampleRules } from './course-of-dose.ts';
import type { DoseToGive } from './dose-to-give.ts';

export type YearUnit = {
  readonly name: string;
  readonly calendar: UnitCalendar;
  /** The date of day 0. */
  readonly begins: CalendarDay;
  /** Places of a session. */
  readonly places: number;
  readonly noticeDays: number;
  readonly samples: SampleRules;
  readonly nurseMinutes: number;
  readonly chairMinutes: number;
  readonly mostFirstVisits: number;
  readonly reservedPercent: number;
  /** First and later visit. */
  readonly kinds: readonly [first: VisitKind, later: VisitKind];
};

export type YearSession = { readonly on: number; readonly booked: Set<CourseOfDose>; readonly seen: CourseOfDose[] };

/** How a unit books and draws. */
export type WayOfWorking = {
  readonly name: string;
  /** Of what is known a week ahead, the share that is seen to. */
  readonly seenTo: number;
  /** Work of the morning: samples asked for and places given, before the day's session. */
  readonly morning: (year: Year, on: number) => void;
};

export type Year = {
  readonly unit: YearUnit;
  readonly sessions: readonly YearSession[];
  /** Doses known of and not yet given. */
  readonly open: ReadonlySet<CourseOfDose>;
  readonly book: (course: CourseOfDose, session: number, on: number) => void;
  readonly release: (course: CourseOfDose) => void;
};

const weekAhead = 7;

export const dateOf = ({ begins }: YearUnit, on: number): CalendarDay => addDays(begins, on);
export const weekdayOf = (unit: YearUnit, on: number): number => weekday(dateOf(unit, on));

/** The last day up to one on which bloods can be taken. */
export function bloodDayUpTo(unit: YearUnit, on: number): number {
  let at = on;
  while (!isBloodDay(unit.calendar, dateOf(unit, at))) at -= 1;
  return at;
}

export function playYear(
  unit: YearUnit,
  doses: readonly DoseToGive[],
  way: WayOfWorking,
  { from, until }: { readonly from: number; readonly until: number },
): { readonly sessions: readonly YearSession[]; readonly courses: readonly CourseOfDose[] } {
  const sessions: YearSession[] = [];
  for (let on = from; on < until; on += 1)
    if (isSessionDay(unit.calendar, dateOf(unit, on))) sessions.push({ on, booked: new Set(), seen: [] });
  const courses = doses.map((dose) => new CourseOfDose(dose, unit.samples));
  const open = new Set<CourseOfDose>();
  const year: Year = {
    unit,
    sessions,
    open,
    book(course, session, on) {
      course.session = session;
      sessions[session]!.booked.add(course);
      course.wasKnown = sessions[session]!.on - on < weekAhead && !course.isReadyOn(sessions[session]!.on);
    },
    release(course) {
      if (course.session !== undefined) sessions[course.session]!.booked.delete(course);
      course.session = undefined;
    },
  };
  let heard = 0;
  for (let on = from; on < until; on += 1) {
    for (; heard < courses.length && courses[heard]!.dose.knownOn <= on; heard += 1) open.add(courses[heard]!);
    way.morning(year, on);
    lookAhead(year, way, on);
    const session = sessions.find((one) => one.on === on);
    for (const course of session?.booked ?? []) {
      course.comes(on);
      if (course.givenOn === undefined) continue;
      open.delete(course);
      session!.seen.push(course);
    }
  }
  return { sessions, courses };
}

/** A week before a session: who will not be ready as things stand, and what can still be done about it. */
function lookAhead({ unit, sessions, release }: Year, { seenTo }: WayOfWorking, on: number): void {
  const session = sessions.find((one) => one.on === on + weekAhead);
  for (const course of session?.booked ?? []) {
    course.wasKnown = !course.isReadyOn(session!.on);
    if (!course.wasKnown || !course.isSeenTo(seenTo)) continue;
    const isHeld = course.unheldFrom > session!.on;
    if (!isHeld && on + unit.samples.resultDays <= session!.on) course.draw(on);
    if (!course.isReadyOn(session!.on)) release(course);
  }
}
