/** Whether what is told to somebody is about the dose they have had, or already about the one ahead. */
import type { Person } from '../register/people.ts';

/** Once a dose is given it is about that one and the year after it; from the recall on, or with a place, about the next. */
export function isAboutDoseGiven({ course, place, today }: Person): boolean {
  const last = course.lastDose;
  if (last === undefined) return false;
  if (place !== undefined) return last.on >= place.on;
  return course.recall === undefined || course.recall.from > today;
}

const noDoseAhead: ReadonlySet<string> = new Set([
  'in review',
  'on planned break',
  'moved to other treatment',
  'transferred out',
  'returned to referrer',
  'said no',
  'closed',
]);

/** Why nobody is told to get ready for a next dose; undefined: one lies ahead, or may. */
export const whyNoDoseAhead = ({ place, standing }: Person): string | undefined =>
  place === undefined && noDoseAhead.has(standing.standing) ? `no dose is planned now: ${standing.says}` : undefined;
