/** Which chair each visit has: a plan only counts chairs; people are told one. */
import type { Day } from '../day/day.ts';
import { type Plan, leavesAt, seenIn } from './plan.ts';

type Numbers = readonly (number | undefined)[];
type Seated = { readonly index: number; readonly from: number; readonly until: number };

function seatedIn(day: Day, plan: Plan): Seated[] {
  return seenIn(day, plan).flatMap(({ visit, index, times }) => {
    const { chair } = visit;
    if (chair === null) return [];
    const from = times.starts[chair.from] ?? times.arrives;
    const watched = times.watchedIn === 'chair' && visit.watch !== null ? visit.watch : chair.to;
    const until = (times.starts[watched] ?? leavesAt(visit, times)) + (visit.steps[watched]?.ticks ?? 0);
    return [{ index, from, until }];
  });
}

const meet = (one: Seated, other: Seated): boolean => one.from < other.until && other.from < one.until;

/** Tries before it is left at the lowest number free, clash or not: the referee speaks of it then. */
const mostTries = 5_000;

/**
 * By visit: a number from 1, or undefined for who needs none. `fixed` numbers stay; `wanted` ones stay where nothing is in the
 * way; else it is the lowest number that is free when it is needed. Above the day's chairs where the plan has too few.
 */
export function chairNumbers(day: Day, plan: Plan, fixed: Numbers = [], wanted: Numbers = []): Numbers {
  const numbers: (number | undefined)[] = day.visits.map(() => undefined);
  const seated = seatedIn(day, plan);
  const tied = seated.filter(({ index }) => fixed[index] !== undefined);
  for (const { index } of tied) numbers[index] = fixed[index];
  const open = seated
    .filter(({ index }) => fixed[index] === undefined)
    .toSorted((a, b) => a.from - b.from || a.index - b.index);
  const most = Math.max(0, ...day.chairs);
  const freeFor = (own: Seated, chair: number, placed: readonly Seated[]): boolean =>
    !placed.some((other) => numbers[other.index] === chair && meet(own, other));
  let tries = 0;
  const seat = (at: number, placed: readonly Seated[]): boolean => {
    const own = open[at];
    if (own === undefined) return true;
    const want = wanted[own.index];
    const inOrder = Array.from({ length: most }, (_, index) => index + 1);
    const choices = want === undefined ? inOrder : [want, ...inOrder.filter((chair) => chair !== want)];
    for (const chair of choices) {
      if (!freeFor(own, chair, placed)) continue;
      if ((tries += 1) > mostTries) return false;
      numbers[own.index] = chair;
      if (seat(at + 1, [...placed, own])) return true;
      numbers[own.index] = undefined;
    }
    return false;
  };
  if (seat(0, tied)) return numbers;
  const placed = [...tied];
  for (const own of open) {
    let chair = 1;
    while (!freeFor(own, chair, placed)) chair += 1;
    numbers[own.index] = chair;
    placed.push(own);
  }
  return numbers;
}
