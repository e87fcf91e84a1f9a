/** How good a plan is, in words. */
import type { Day } from '../day/day.ts';
import { clockAt, minutesOf } from '../day/time-words.ts';
import type { Objective } from './objective.ts';

export function objectiveText(day: Day, { unseen, overtime, wait, finish }: Objective): string {
  const people = day.visits.length === 1 ? 'one person' : `${day.visits.length} people`;
  const seen = unseen === 0 ? 'everyone is seen' : `${unseen} not seen`;
  const late = overtime === 0 ? '' : `, ${minutesOf(day, overtime)} of overtime`;
  const waits =
    wait === 0 ? 'Nobody waits inside the visit.' : `Waiting inside the visits, all together: ${minutesOf(day, wait)}.`;
  return `${day.id}: ${people}, ${seen}. The last leaves at ${clockAt(day, finish)}; the unit closes at ${clockAt(day, day.closes)}${late}. ${waits}`;
}

/** The bound in words; a field says nothing once one before it is not reached. */
export function boundText(day: Day, objective: Objective, atLeast: Objective, isProven: boolean): string {
  if (isProven) return 'Proven best: no plan has less overtime, less waiting, or an earlier end at no more waiting.';
  const least = (what: string, ticks: number): string =>
    `There may be a better plan: it is proven only that none has less than ${minutesOf(day, ticks)} of ${what}.`;
  if (atLeast.overtime < objective.overtime) return least('overtime', atLeast.overtime);
  if (atLeast.wait < objective.wait) return least('waiting', atLeast.wait);
  return `It is proven that no plan has less waiting. One with as little might end earlier, but none before ${clockAt(day, atLeast.finish)}.`;
}
