/** Windows, filled once a week by the planner itself, and samples timed to the place: the way this product proposes. */
import { plainDate } from '@twelvemonth/clinical';
import { fillSessions } from '../fill/fill.ts';
import { type FillSession, type Tier, type Waiting, usualFillWeights } from '../fill/request.ts';
import type { CourseOfDose } from './course-of-dose.ts';
import { type WayOfWorking, type Year, bloodDayUpTo, dateOf, weekdayOf } from './play-year.ts';

const monday = 1;
/** Places are looked for so many days ahead. */
const horizonDays = 182;

const kindOf = ({ dose }: CourseOfDose): number => (dose.isFirst ? 0 : 1);

/** What those booked leave of a session. */
function leftOf({ unit, sessions }: Year, index: number): FillSession {
  const { on, booked } = sessions[index]!;
  const used = (of: 'nurseMinutes' | 'chairMinutes'): number =>
    [...booked].reduce((sum, course) => sum + unit.kinds[kindOf(course)]![of], 0);
  const firsts = [...booked].filter(({ dose }) => dose.isFirst).length;
  return {
    day: dateOf(unit, on),
    site: unit.name,
    nurseMinutes: Math.max(0, unit.nurseMinutes - used('nurseMinutes')),
    chairMinutes: Math.max(0, unit.chairMinutes - used('chairMinutes')),
    mostFirstVisits: Math.max(0, unit.mostFirstVisits - firsts),
    mostVisits: unit.places - booked.size,
    reservedPercent: unit.reservedPercent,
  };
}

function tierOf({ dose }: CourseOfDose, on: number): Tier {
  if (dose.isFirstInLine) return 0;
  return !dose.isFirst && on > dose.due ? 1 : 2;
}

/** Known well enough for a window: the first sample was looked at, and teeth are seen to. */
const hasWindow = (course: CourseOfDose, on: number): boolean => {
  const { dose } = course;
  return !dose.isFirst || (dose.teethSeenOn <= on && course.asked > 0 && course.awaitsUntil <= on);
};

function waitingOf({ unit }: Year, course: CourseOfDose, on: number): Waiting {
  const { resultDays, given } = unit.samples;
  const date = (day: number) => dateOf(unit, day);
  const isUsable = course.usableUntil >= on;
  return {
    name: '',
    kind: kindOf(course),
    tier: tierOf(course, on),
    earliest: { day: date(Math.max(on + unit.noticeDays, course.unheldFrom)), because: 'window' },
    latest: { day: date(on + horizonDays), because: 'window' },
    due: date(course.dose.due),
    bloods: {
      usableUntil: isUsable ? date(course.usableUntil) : null,
      drawFrom: date(Math.max(on, course.awaitsUntil)),
      daysToResult: resultDays + given.drawMarginDays,
    },
    weekdays: [],
    travelMinutes: { [unit.name]: 0 },
    told: null,
    noticeDays: unit.noticeDays,
  };
}

function fillPlaces(year: Year, on: number): void {
  const { unit, sessions, open } = year;
  const waiting = [...open].filter((course) => course.session === undefined && hasWindow(course, on));
  if (waiting.length === 0) return;
  const indexes = [...sessions.keys()].filter((index) => {
    const ahead = sessions[index]!.on - on;
    return ahead >= unit.noticeDays && ahead <= horizonDays;
  });
  const answer = fillSessions({
    today: dateOf(unit, on),
    kinds: unit.kinds,
    sessions: indexes.map((index) => leftOf(year, index)),
    people: waiting.map((course) => waitingOf(year, course, on)),
    weights: usualFillWeights,
  });
  if (!answer.ok) throw new Error(`${plainDate(dateOf(unit, on))}: ${answer.problems.join('; ')}`);
  answer.session.forEach((session, person) => {
    if (session !== null) year.book(waiting[person]!, indexes[session]!, on);
  });
}

/** At referral, because triage asks for it; then for the place, so that the result leaves time to act. */
function drawsIfTimed({ unit, sessions }: Year, course: CourseOfDose, on: number): void {
  const { session, dose } = course;
  if (dose.isFirst && course.asked === 0 && on >= dose.drawnOn) course.draw(on);
  if (session === undefined || course.askedFor === session || on < course.awaitsUntil) return;
  const { on: visit } = sessions[session]!;
  if (course.hasBloodsOn(visit)) return;
  const { resultDays, given } = unit.samples;
  if (on >= bloodDayUpTo(unit, visit - resultDays - given.drawMarginDays)) course.draw(on);
}

export const byWindows = (seenTo: number): WayOfWorking => ({
  name: 'by windows',
  seenTo,
  morning(year, on) {
    const { unit, sessions, open, release } = year;
    const isBloodDay = bloodDayUpTo(unit, on) === on;
    for (const course of open) {
      if (isBloodDay) drawsIfTimed(year, course, on);
      const { session } = course;
      const isOff = session !== undefined && course.badKnownFrom <= on && course.unheldFrom > sessions[session]!.on;
      if (isOff) release(course);
    }
    if (weekdayOf(unit, on) === monday) fillPlaces(year, on);
  },
});
