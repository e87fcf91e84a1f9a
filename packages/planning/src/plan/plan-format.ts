/**
 * A plan as text: each person with times of day. Written by us or by hand; who is not in it is not seen. The steps may be left
 * out where only the arrivals are known: enough to rehearse it, and the referee says that they are missing.
 */
import { z } from 'zod';
import type { Day, Visit } from '../day/day.ts';
import { type FormatProblem, clock, minuteOf, problemsOf } from '../day/format-problem.ts';
import { clockAt } from '../day/time-words.ts';
import { type Lock, lockNames } from './lock.ts';
import { type Plan, type VisitTimes, leavesAt, seenIn, waitOf } from './plan.ts';

const timesShape = z.strictObject({
  name: z.string().min(1),
  arrives: clock,
  steps: z.array(z.strictObject({ step: z.string(), from: clock, to: clock.optional() })).default([]),
  preparation: clock.nullable().default(null),
  secondCheck: clock.nullable().default(null),
  watchedIn: z.enum(['watch place', 'chair']).nullable().default(null),
  chair: z.int().positive().optional(),
  locked: z.enum(lockNames).optional(),
  // What follows from the times; written for whoever reads it, and not read back.
  leaves: clock.optional(),
  waitMinutes: z.number().optional(),
});

const planShape = z.array(timesShape);

export type PlanRead =
  | {
      readonly ok: true;
      readonly plan: Plan;
      /** By visit, as they were written; undefined where nothing was. */
      readonly chairs: readonly (number | undefined)[];
      readonly locks: readonly (Lock | undefined)[];
    }
  | { readonly ok: false; readonly problems: readonly FormatProblem[] };

export type PlanWritten = readonly z.input<typeof timesShape>[];

/** `drawn`: chairs by number and what is locked, where they are known. */
export const writePlan = (
  day: Day,
  plan: Plan,
  drawn?: { readonly chairs: readonly (number | undefined)[]; readonly locks: readonly (Lock | undefined)[] },
): PlanWritten =>
  seenIn(day, plan).map(({ visit, index, times }) => ({
    name: visit.name,
    arrives: clockAt(day, times.arrives),
    leaves: clockAt(day, leavesAt(visit, times)),
    waitMinutes: waitOf(visit, times) * day.minutesPerTick,
    steps: visit.steps.map(({ name, ticks }, index) => ({
      step: name,
      from: clockAt(day, times.starts[index] ?? 0),
      to: clockAt(day, (times.starts[index] ?? 0) + ticks),
    })),
    preparation: times.preparation === null ? null : clockAt(day, times.preparation),
    secondCheck: times.secondCheck === null ? null : clockAt(day, times.secondCheck),
    watchedIn: times.watchedIn,
    ...(drawn?.chairs[index] === undefined ? {} : { chair: drawn.chairs[index] }),
    ...(drawn?.locks[index] === undefined ? {} : { locked: drawn.locks[index] }),
  }));

type TickAt = (field: string, time: string) => number;

function tickAtFor(day: Day, problems: FormatProblem[]): TickAt {
  return (field, time) => {
    const tick = (minuteOf(time) - day.startsAtMinute) / day.minutesPerTick;
    const below = Math.floor(tick);
    if (tick !== below)
      problems.push({
        at: field,
        says: `${time} is not on the grid of ${day.minutesPerTick} minutes: write ${clockAt(day, below)} or ${clockAt(day, below + 1)}`,
      });
    if (tick < 0 || tick > day.ticks)
      problems.push({
        at: field,
        says: `${time} is outside the day, ${clockAt(day, 0)} to ${clockAt(day, day.ticks)}: write a time inside it`,
      });
    return below;
  };
}

/** The steps by name in their order; a step too many, too few, out of order or of another length is a problem. */
function startsOf(
  day: Day,
  visit: Visit,
  given: z.infer<typeof timesShape>,
  at: string,
  tickAt: TickAt,
  problems: FormatProblem[],
): number[] {
  const named = given.steps.map(({ step }) => step);
  const expected = visit.steps.map(({ name }) => name);
  if (named.length > 0 && named.join() !== expected.join())
    problems.push({ at: `${at}.steps`, says: `must be, in this order: ${expected.join(', ')}` });
  return given.steps.map(({ from, to }, index) => {
    const start = tickAt(`${at}.steps.${index}.from`, from);
    const end = start + (visit.steps[index]?.ticks ?? 0);
    if (to !== undefined && tickAt(`${at}.steps.${index}.to`, to) !== end)
      problems.push({
        at: `${at}.steps.${index}.to`,
        says: `the step ends at ${clockAt(day, end)} when it begins at ${from}: write that, or leave it out`,
      });
    return start;
  });
}

export function readPlan(day: Day, json: unknown): PlanRead {
  const read = planShape.safeParse(json);
  const prefixed = (at: string): string => (at === '' ? 'plan' : `plan.${at}`);
  if (!read.success)
    return { ok: false, problems: problemsOf(read.error).map(({ at, says }) => ({ at: prefixed(at), says })) };
  const problems: FormatProblem[] = [];
  const tickAt = tickAtFor(day, problems);
  const plan: (VisitTimes | null)[] = day.visits.map(() => null);
  const chairs: (number | undefined)[] = day.visits.map(() => undefined);
  const locks: (Lock | undefined)[] = day.visits.map(() => undefined);
  read.data.forEach((given, index) => {
    const at = `plan.${index}`;
    const of = day.visits.findIndex(({ name }) => name === given.name);
    const visit = day.visits[of];
    if (visit === undefined || plan[of] !== null) {
      const says =
        visit === undefined ? `nobody of the day is called "${given.name}"` : `"${given.name}" is in it twice`;
      problems.push({ at: `${at}.name`, says: `${says}: correct the name, or take the line out` });
      return;
    }
    const moment = (field: 'preparation' | 'secondCheck'): number | null =>
      given[field] === null ? null : tickAt(`${at}.${field}`, given[field]);
    const isUnheld = given.chair === undefined && (given.locked === 'chair' || given.locked === 'time and chair');
    if (isUnheld || (given.chair !== undefined && visit.chair === null))
      problems.push({
        at: `${at}.chair`,
        says: isUnheld ? 'is missing: a locked chair needs its number' : 'this visit needs no chair: leave it out',
      });
    chairs[of] = given.chair;
    locks[of] = given.locked;
    plan[of] = {
      arrives: tickAt(`${at}.arrives`, given.arrives),
      starts: startsOf(day, visit, given, at, tickAt, problems),
      preparation: moment('preparation'),
      secondCheck: moment('secondCheck'),
      watchedIn: given.watchedIn,
    };
  });
  return problems.length > 0 ? { ok: false, problems } : { ok: true, plan, chairs, locks };
}
