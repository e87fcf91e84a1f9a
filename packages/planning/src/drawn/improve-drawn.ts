/**
 * "Improve what I drew": what is locked stays; of the rest, what keeps the rules is where the search begins, and what breaks
 * them is given other times. A drawing that keeps every rule never comes back worse.
 */
import type { Day } from '../day/day.ts';
import { chairNumbers } from '../plan/chair-numbers.ts';
import { holdsChair, holdsTime } from '../plan/lock.ts';
import { type Objective, compareObjectives, objectiveOf } from '../plan/objective.ts';
import type { Plan } from '../plan/plan.ts';
import { broken } from '../referee/referee.ts';
import { oneToAChair } from '../referee/rules/one-to-a-chair.ts';
import type { Sentence } from '../referee/sentence.ts';
import type { Limit } from '../search/limit.ts';
import { planDay } from '../search/search.ts';
import { type Drawn, brokenInDrawing } from './drawn.ts';

export type Improved =
  | { readonly kind: 'improved'; readonly drawn: Drawn; readonly objective: Objective }
  /** What is locked breaks a rule by itself: no planning can help. */
  | { readonly kind: 'locks break rules'; readonly said: readonly Sentence[] }
  /** Beside what is locked there is no place for these visits. */
  | { readonly kind: 'no place'; readonly visits: readonly number[] };

const isAboutTimes = ({ rule }: Sentence): boolean => rule !== 'everyone is seen';

/** Each search begins with another seed: a plan may be good and yet ask somebody to change chairs. */
const mostSearches = 6;

export function improveDrawn(
  day: Day,
  drawn: Drawn,
  { seed, limit }: { readonly seed: number; readonly limit: Limit },
): Improved {
  const { plan, chairs, locks } = drawn;
  const fixed = chairs.map((chair, visit) => (holdsChair(locks[visit]) ? chair : undefined));
  const locked = [...day.visits.keys()].filter((visit) => holdsTime(locks[visit]) && plan[visit] !== null);
  const only = (some: readonly number[]): Plan =>
    day.visits.map((_, at) => (some.includes(at) ? (plan[at] ?? null) : null));
  const tied = only(locked);
  const said = [
    ...broken(day, tied).filter(isAboutTimes),
    ...oneToAChair(day, only(locked.filter((visit) => fixed[visit] !== undefined)), fixed),
  ];
  if (said.length > 0) return { kind: 'locks break rules', said };
  const kept = [...locked];
  const arrival = (visit: number): number => plan[visit]?.arrives ?? day.ticks;
  for (const visit of [...day.visits.keys()].toSorted((a, b) => arrival(a) - arrival(b) || a - b))
    if (!kept.includes(visit) && !broken(day, only([...kept, visit])).some(isAboutTimes)) kept.push(visit);
  let best: Drawn | undefined;
  let unseen: readonly number[] = [];
  for (let search = 0; search < mostSearches; search += 1) {
    const found = planDay(day, { seed: seed + search, limit, from: only(kept), locked }).plan;
    const next = { plan: found, chairs: chairNumbers(day, found, fixed, chairs), locks };
    const none = found.flatMap((times, visit) => (times === null ? [visit] : []));
    if (none.length > 0) {
      unseen = unseen.length === 0 || none.length < unseen.length ? none : unseen;
      continue;
    }
    if (brokenInDrawing(day, next).length === 0) return improvedFrom(day, drawn, next);
    best ??= next;
  }
  return best === undefined ? { kind: 'no place', visits: unseen } : improvedFrom(day, drawn, best);
}

/** The drawing itself where nothing better was found and it keeps the rules. */
function improvedFrom(day: Day, drawn: Drawn, next: Drawn): Improved {
  const objective = objectiveOf(day, next.plan);
  const before = objectiveOf(day, drawn.plan);
  const isAllowed = brokenInDrawing(day, drawn).length === 0;
  const isNoBetter = compareObjectives(objective, before) >= 0 || brokenInDrawing(day, next).length > 0;
  return isAllowed && isNoBetter
    ? { kind: 'improved', drawn, objective: before }
    : { kind: 'improved', drawn: next, objective };
}
