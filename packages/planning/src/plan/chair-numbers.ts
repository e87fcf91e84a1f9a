/** Which chair each visit has: the lowest number that is free when it is needed. A plan only counts chairs; people are told one. */
import type { Day } from '../day/day.ts';
import { type Plan, leavesAt, seenIn } from './plan.ts';

/** By visit: a number from 1, or undefined for who needs none. Above the day's chairs where the plan has too few. */
export function chairNumbers(day: Day, plan: Plan): readonly (number | undefined)[] {
  const numbers: (number | undefined)[] = day.visits.map(() => undefined);
  const freeFrom: number[] = [];
  const seated = seenIn(day, plan).flatMap(({ visit, index, times }) => {
    const { chair } = visit;
    if (chair === null) return [];
    const from = times.starts[chair.from] ?? times.arrives;
    const watched = times.watchedIn === 'chair' && visit.watch !== null ? visit.watch : chair.to;
    const until = (times.starts[watched] ?? leavesAt(visit, times)) + (visit.steps[watched]?.ticks ?? 0);
    return [{ index, from, until }];
  });
  for (const { index, from, until } of seated.toSorted((a, b) => a.from - b.from || a.index - b.index)) {
    const free = freeFrom.findIndex((since) => since <= from);
    const chair = free < 0 ? freeFrom.length : free;
    freeFrom[chair] = until;
    numbers[index] = chair + 1;
  }
  return numbers;
}
