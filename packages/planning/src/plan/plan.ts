/** A plan: when each step of each visit begins. Drawn by hand or computed, it is the same value. */
import type { Day, Tick, Visit } from '../day/day.ts';

export type VisitTimes = {
  readonly arrives: Tick;
  /** The beginning of each step, in the order of the visit's steps. */
  readonly starts: readonly Tick[];
  /** The beginning of preparation and second check; null where the visit has no dose to prepare. */
  readonly preparation: Tick | null;
  readonly secondCheck: Tick | null;
  /** Where the watch after the visit is spent; null where there is none. */
  readonly watchedIn: 'watch place' | 'chair' | null;
};

/** One line for each visit of the day, in the same order; null means that this person is not seen. */
export type Plan = readonly (VisitTimes | null)[];

/** The tick at which the last step has ended. */
export function leavesAt(visit: Visit, times: VisitTimes): Tick {
  const last = visit.steps.length - 1;
  return (times.starts[last] ?? 0) + (visit.steps[last]?.ticks ?? 0);
}

/** Ticks between arrival and leaving in which nothing is done. */
export function waitOf(visit: Visit, times: VisitTimes): number {
  const care = visit.steps.reduce((sum, step) => sum + step.ticks, 0);
  return leavesAt(visit, times) - times.arrives - care;
}

/** Every visit with its times, those not seen left out. */
export const seenIn = (
  day: Day,
  plan: Plan,
): { readonly visit: Visit; readonly index: number; readonly times: VisitTimes }[] =>
  day.visits.flatMap((visit, index) => {
    const times = plan[index];
    return times === null || times === undefined ? [] : [{ visit, index, times }];
  });
