/** Everyone has times, and times for everything. The other rules look only at visits that do. */
import type { Day, Visit } from '../../day/day.ts';
import type { Plan, VisitTimes } from '../../plan/plan.ts';
import type { Rule, Sentence } from '../sentence.ts';

const isTick = (value: unknown): boolean => typeof value === 'number' && Number.isInteger(value) && value >= 0;

function missingIn(visit: Visit, times: VisitTimes): string[] {
  const missing: string[] = [];
  if (!isTick(times.arrives)) missing.push('arrival');
  visit.steps.forEach((step, index) => {
    if (!isTick(times.starts[index])) missing.push(step.name);
  });
  if (visit.dose !== null && !isTick(times.preparation)) missing.push('preparation');
  if (visit.dose !== null && !isTick(times.secondCheck)) missing.push('second check');
  if (visit.watch !== null && times.watchedIn === null) missing.push('where the watch is spent');
  return missing;
}

export const timesAreComplete: Rule = (day, plan) =>
  day.visits.flatMap((visit, index): Sentence[] => {
    const times = plan[index];
    const at = { from: null, until: null, visits: [index] };
    if (times === null || times === undefined)
      return [{ rule: 'everyone is seen', ...at, says: `${visit.name} is not seen.` }];
    const missing = missingIn(visit, times);
    return missing.length === 0
      ? []
      : [{ rule: 'times are complete', ...at, says: `${visit.name} has no time for: ${missing.join(', ')}.` }];
  });

export type CompleteVisit = { readonly visit: Visit; readonly index: number; readonly times: VisitTimes };

/** The visits every other rule can speak about. */
export const completeVisits = (day: Day, plan: Plan): CompleteVisit[] =>
  day.visits.flatMap((visit, index) => {
    const times = plan[index];
    if (times === null || times === undefined || missingIn(visit, times).length > 0) return [];
    return [{ visit, index, times }];
  });

/** When each step begins and ends. */
export const stepsOf = ({
  visit,
  times,
}: CompleteVisit): { readonly name: string; readonly from: number; readonly until: number }[] =>
  visit.steps.map((step, index) => {
    const from = times.starts[index] ?? 0;
    return { name: step.name, from, until: from + step.ticks };
  });
