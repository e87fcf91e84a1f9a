/**
 * A day as a course to be played. Nurses are counted by tick; chairs, watch places, preparers and checkers as many as the day
 * has at its fullest, so a preparer's break or a room that closes early is not felt in a rehearsal.
 */
import type { Capacity, Day, NurseNeed, Visit } from '../day/day.ts';
import type { Course } from './serve.ts';

export const courseStride = 16;

const unitsOf: (day: Day, need: NurseNeed) => number = (day, need) =>
  need === 'whole' ? day.watchedPerNurse : need === 'shared' ? 1 : 0;

const most = (capacity: Capacity): number => capacity.reduce((a, b) => Math.max(a, b), 0);

/** Changes of the number of nurses, in minutes from the beginning of the day and units of nurse. */
function changesOf(day: Day): { readonly at: number[]; readonly by: number[] } {
  const at: number[] = [];
  const by: number[] = [];
  for (let tick = 1; tick < day.ticks; tick += 1) {
    const change = (day.nurses[tick] ?? 0) - (day.nurses[tick - 1] ?? 0);
    if (change === 0) continue;
    at.push(tick * day.minutesPerTick);
    by.push(change * day.watchedPerNurse);
  }
  // Past the end of the grid whoever was there last stays until the last person has gone, at least one nurse.
  if ((day.nurses[day.ticks - 1] ?? 0) === 0) {
    at.push(day.ticks * day.minutesPerTick);
    by.push(day.watchedPerNurse);
  }
  return { at, by };
}

export function courseOf(day: Day): Course {
  const { visits } = day;
  const byVisit = (of: (visit: Visit) => number): Int8Array => Int8Array.from(visits, of);
  const units = new Uint8Array(visits.length * courseStride);
  visits.forEach((visit, row) =>
    visit.steps.forEach((step, index) => (units[row * courseStride + index] = unitsOf(day, step.nurse))),
  );
  const { at, by } = changesOf(day);
  return {
    visits: visits.length,
    stride: courseStride,
    stepCount: Uint8Array.from(visits, (visit) => visit.steps.length),
    units,
    chairFrom: byVisit((visit) => visit.chair?.from ?? -1),
    chairTo: byVisit((visit) => visit.chair?.to ?? -1),
    watch: byVisit((visit) => visit.watch ?? -1),
    doseBefore: byVisit((visit) => visit.dose?.before ?? -1),
    keeps: Float64Array.from(visits, (visit) => (visit.dose?.keepsTicks ?? 0) * day.minutesPerTick),
    chairs: most(day.chairs),
    watchPlaces: most(day.watchPlaces),
    preparers: most(day.preparers),
    checkers: most(day.checkers),
    nurseUnits: (day.nurses[0] ?? 0) * day.watchedPerNurse,
    changeAt: Float64Array.from(at),
    changeBy: Int16Array.from(by),
  };
}
