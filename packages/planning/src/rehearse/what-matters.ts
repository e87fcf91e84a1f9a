/** What would matter most for a day: the same draws played with one thing more or one thing gone. */
import type { Capacity, Day } from '../day/day.ts';
import type { Plan } from '../plan/plan.ts';
import type { Chances } from './chances.ts';
import { type RehearseOptions, rehearse } from './rehearse.ts';

export type Effect = {
  readonly what: string;
  /** Change of the share of days that end on time, and of the mean stay in minutes. */
  readonly onTime: number;
  readonly stayMinutes: number;
};

const more = (capacity: Capacity, by: number): Capacity => capacity.map((count) => Math.max(0, count + by));

/** The largest effect on ending on time first. */
export function whatMatters(day: Day, plan: Plan, chances: Chances, options: RehearseOptions): Effect[] {
  const usual = rehearse(day, plan, chances, options);
  const others: [what: string, day: Day, chances: Chances][] = [
    ['one nurse more', { ...day, nurses: more(day.nurses, 1) }, chances],
    ['one nurse fewer', { ...day, nurses: day.nurses.map((count) => Math.max(1, count - 1)) }, chances],
    ['one chair more', { ...day, chairs: more(day.chairs, 1) }, chances],
    ['one chair fewer', { ...day, chairs: day.chairs.map((count) => Math.max(1, count - 1)) }, chances],
    ['everyone comes on time', day, { ...chances, lateness: { mean: 0, deviation: 0 } }],
    ['every cannula at the first try', day, { ...chances, cannulaFails: { ...chances.cannulaFails, probability: 0 } }],
    ['everyone comes', day, { ...chances, doesNotCome: 0, putOff: 0 }],
  ];
  return others
    .map(([what, otherDay, otherChances]) => {
      const other = rehearse(otherDay, plan, otherChances, options);
      return { what, onTime: other.onTime - usual.onTime, stayMinutes: other.stay.mean - usual.stay.mean };
    })
    .toSorted((a, b) => Math.abs(b.onTime) - Math.abs(a.onTime) || Math.abs(b.stayMinutes) - Math.abs(a.stayMinutes));
}
