/** How good a plan is: four numbers, the first that differs decides. Never traded against each other. */
import type { Day } from '../day/day.ts';
import { type Plan, leavesAt, seenIn, waitOf } from './plan.ts';

export type Objective = {
  readonly unseen: number;
  /** Ticks from the end of the unit's day to the last leaving. */
  readonly overtime: number;
  /** Ticks waited inside the visits, all together. */
  readonly wait: number;
  /** The tick of the last leaving. */
  readonly finish: number;
};

export function objectiveOf(day: Day, plan: Plan): Objective {
  const seen = seenIn(day, plan);
  const finish = seen.reduce((latest, { visit, times }) => Math.max(latest, leavesAt(visit, times)), 0);
  return {
    unseen: day.visits.length - seen.length,
    overtime: Math.max(0, finish - day.closes),
    wait: seen.reduce((sum, { visit, times }) => sum + waitOf(visit, times), 0),
    finish,
  };
}

/** Negative when the first is better. */
export const compareObjectives = (one: Objective, other: Objective): number =>
  one.unseen - other.unseen || one.overtime - other.overtime || one.wait - other.wait || one.finish - other.finish;
