/** A plan as somebody draws it on a board: with the chair of each visit, and what is locked. */
import type { Day } from '../day/day.ts';
import { chairNumbers } from '../plan/chair-numbers.ts';
import { type Lock, holdsChair, holdsTime } from '../plan/lock.ts';
import { type Plan, type VisitTimes, leavesAt } from '../plan/plan.ts';
import { leastInTheWay } from '../referee/least-in-the-way.ts';
import { broken } from '../referee/referee.ts';
import { oneToAChair } from '../referee/rules/one-to-a-chair.ts';
import type { Sentence } from '../referee/sentence.ts';

export type Drawn = {
  readonly plan: Plan;
  /** By visit, from 1; undefined for who needs none. */
  readonly chairs: readonly (number | undefined)[];
  readonly locks: readonly (Lock | undefined)[];
};

export const drawnFrom = (day: Day, plan: Plan): Drawn => ({
  plan,
  chairs: chairNumbers(day, plan),
  locks: day.visits.map(() => undefined),
});

/** Every way in which the drawing breaks a rule of the day, its chairs by number too. */
export const brokenInDrawing = (day: Day, { plan, chairs }: Drawn): readonly Sentence[] => {
  const said = broken(day, plan);
  // Where there are too few chairs whatever their numbers, that is said once.
  const isOverfull = said.some(({ rule }) => rule === 'chairs');
  return isOverfull ? said : [...said, ...oneToAChair(day, plan, chairs)];
};

/** All times by so many ticks, no further than the edges of the day; who is brought arrives when the transport does, and waits. */
function shifted(day: Day, visit: number, times: VisitTimes, ticks: number): VisitTimes | undefined {
  const own = day.visits[visit];
  if (own === undefined) return undefined;
  const first = Math.min(times.arrives, ...times.starts);
  const by = Math.min(Math.max(ticks, -first), day.ticks - leavesAt(own, times));
  if (by === 0) return undefined;
  const shift = (tick: number): number => tick + by;
  return {
    ...times,
    arrives: own.arrival === 'transport' ? times.arrives : shift(times.arrives),
    starts: times.starts.map(shift),
    preparation: times.preparation === null ? null : shift(times.preparation),
    secondCheck: times.secondCheck === null ? null : shift(times.secondCheck),
  };
}

/**
 * One visit moved by so many ticks and so many chairs; its dose and its watch are put where they are least in the way. The
 * rest of the drawing stays. It goes no further than the edges of the day and the chairs there are, and stays where a lock holds it.
 */
export function moveInDrawing(day: Day, drawn: Drawn, visit: number, ticks: number, chairsDown: number): Drawn {
  const times = drawn.plan[visit];
  const chair = drawn.chairs[visit];
  const lock = drawn.locks[visit];
  if (times === null || times === undefined) return drawn;
  const to = ticks === 0 || holdsTime(lock) ? undefined : shifted(day, visit, times, ticks);
  const most = Math.max(0, ...day.chairs);
  const seat = chair === undefined || holdsChair(lock) ? chair : Math.min(most, Math.max(1, chair + chairsDown));
  if (to === undefined && seat === chair) return drawn;
  const plan = to === undefined ? drawn.plan : drawn.plan.with(visit, leastInTheWay(day, drawn.plan, visit, to).times);
  return { ...drawn, plan, chairs: drawn.chairs.with(visit, seat) };
}
