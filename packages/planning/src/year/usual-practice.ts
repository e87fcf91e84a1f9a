/** The first free place, bloods at referral or when recalled, and what the week before shows to whoever looks. */
import type { CourseOfDose } from './course-of-dose.ts';
import { type WayOfWorking, type Year, bloodDayUpTo } from './play-year.ts';

/** The first session with a place free, told in time and not before the dose may be given by its interval. */
function firstFree({ unit, sessions }: Year, from: number): number | undefined {
  const found = sessions.findIndex((session) => session.on >= from && session.booked.size < unit.places);
  return found < 0 ? undefined : found;
}

/** A place given at once leaves so long for the referral's bloods. */
const daysForBloods = 14;

/**
 * From when a place is looked for; undefined: not yet. Worked up first, or booked at once; who was turned away is worked up
 * before another place, who did not come rings for the next one.
 */
function lookedForFrom(course: CourseOfDose, on: number): number | undefined {
  const { dose, turnedAway, didNotCome } = course;
  if (turnedAway.length === 0) {
    if (!dose.isFirst || didNotCome.length > 0) return on;
    if (dose.placeFirst) return on > dose.knownOn ? dose.knownOn + daysForBloods : undefined;
  }
  return on >= course.unheldFrom && course.hasBloodsOn(on) ? on : undefined;
}

/** Nobody rings about a sample that did not come before this many days. */
const chaseDays = 14;

/** Once at referral or recall; again when a bad result is settled, or when someone without a place is looked at again. */
function isDrawn(course: CourseOfDose, on: number): boolean {
  if (course.asked === 0) return on >= course.dose.drawnOn;
  if (on < course.awaitsUntil || on <= course.usableUntil) return false;
  if (course.badKnownFrom <= on) return true;
  const isLookedAt = course.turnedAway.length > 0 || on >= course.awaitsUntil + chaseDays;
  return course.session === undefined && isLookedAt;
}

export const usualPractice = (seenTo: number): WayOfWorking => ({
  name: 'usual practice',
  seenTo,
  morning(year, on) {
    const { unit, open } = year;
    const isBloodDay = bloodDayUpTo(unit, on) === on;
    for (const course of open) {
      if (isBloodDay && isDrawn(course, on)) course.draw(on);
      const from = course.session === undefined ? lookedForFrom(course, on) : undefined;
      if (from === undefined) continue;
      const session = firstFree(year, Math.max(from, on + unit.noticeDays, course.dose.due));
      if (session !== undefined) year.book(course, session, on);
    }
  },
});
