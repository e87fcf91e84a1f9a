/** How many of each are needed and how many there are, tick by tick: what the rows under a board show. */
import type { Capacity, Day } from '../day/day.ts';
import { type Plan, seenIn } from './plan.ts';

export type Load = {
  readonly of: 'nurses' | 'preparers' | 'checkers' | 'watchPlaces';
  readonly needed: readonly number[];
  readonly there: Capacity;
};

export function loadsOf(day: Day, plan: Plan): readonly Load[] {
  const lane = (): number[] => Array.from({ length: day.ticks }, () => 0);
  const [whole, watched, preparers, checkers, places] = [lane(), lane(), lane(), lane(), lane()];
  const fill = (into: number[], from: number, ticks: number): void => {
    for (let tick = Math.max(0, from); tick < Math.min(day.ticks, from + ticks); tick += 1) into[tick]! += 1;
  };
  for (const { visit, times } of seenIn(day, plan)) {
    visit.steps.forEach(({ ticks, nurse }, step) => {
      if (nurse !== 'none') fill(nurse === 'whole' ? whole : watched, times.starts[step] ?? 0, ticks);
    });
    if (visit.dose !== null && times.preparation !== null)
      fill(preparers, times.preparation, visit.dose.preparationTicks);
    if (visit.dose !== null && times.secondCheck !== null)
      fill(checkers, times.secondCheck, visit.dose.secondCheckTicks);
    if (visit.watch !== null && times.watchedIn === 'watch place')
      fill(places, times.starts[visit.watch] ?? 0, visit.steps[visit.watch]?.ticks ?? 0);
  }
  const nurses = whole.map((count, tick) => count + Math.ceil((watched[tick] ?? 0) / day.watchedPerNurse));
  return [
    { of: 'nurses', needed: nurses, there: day.nurses },
    { of: 'preparers', needed: preparers, there: day.preparers },
    { of: 'checkers', needed: checkers, there: day.checkers },
    { of: 'watchPlaces', needed: places, there: day.watchPlaces },
  ];
}
