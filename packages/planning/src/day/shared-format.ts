/**
 * Days as text: the format of the shared day instances. One fixed chain, grid of 5 minutes, capacities of staff by tick.
 * What the format cannot say (other chains, rooms that close, people who must not wait) is refused on writing.
 */
import { z } from 'zod';
import type { Capacity, Day, Visit } from './day.ts';
import { infusionChain, usualStepTicks } from './chains.ts';
import { type FormatProblem, clock, minuteOf, mostTicks, problemsOf } from './format-problem.ts';
import { clockAt } from './time-words.ts';

const count = z.int().nonnegative();
const capacity = z.array(count);

const visitShape = z.object({
  id: count,
  first: z.boolean(),
  inf: z.int().positive(),
  est: count,
  lct: count,
  fixedArrival: z.boolean(),
});

const dayShape = z
  .object({
    id: z.string(),
    seed: z.int().optional(),
    slotMin: z.int().positive(),
    dayStart: clock,
    horizon: z.int().positive().max(mostTicks),
    chairs: count,
    seats: count,
    nurse: capacity,
    prep: capacity,
    check: capacity,
    patients: z.array(visitShape),
  })
  .superRefine((day, context) => {
    for (const name of ['nurse', 'prep', 'check'] as const) {
      if (day[name].length !== day.horizon)
        context.addIssue({
          code: 'custom',
          path: [name],
          message: `has ${day[name].length} numbers, not ${day.horizon}`,
        });
    }
    day.patients.forEach((patient, index) => {
      if (patient.est >= patient.lct || patient.lct > day.horizon)
        context.addIssue({
          code: 'custom',
          path: ['patients', index, 'lct'],
          message: `must be more than est, ${patient.est}, and at most horizon, ${day.horizon}`,
        });
    });
  });

export type DayRead =
  | { readonly ok: true; readonly day: Day }
  | { readonly ok: false; readonly problems: readonly FormatProblem[] };

function visitOf(patient: z.infer<typeof visitShape>): Visit {
  return {
    name: `visit ${patient.id + 1}`,
    ...infusionChain(usualStepTicks, patient.inf, patient.first ? usualStepTicks.watch : 0),
    earliest: patient.est,
    latest: patient.lct,
    arrival: patient.fixedArrival ? 'transport' : 'free',
    mayWait: true,
  };
}

export function readDay(text: string): DayRead {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    return { ok: false, problems: [{ at: '', says: `not JSON: ${error instanceof Error ? error.message : ''}` }] };
  }
  return readSharedDay(json);
}

export function readSharedDay(json: unknown): DayRead {
  const read = dayShape.safeParse(json);
  if (!read.success) return { ok: false, problems: problemsOf(read.error) };
  const { data } = read;
  const all = (value: number): Capacity => Array.from({ length: data.horizon }, () => value);
  return {
    ok: true,
    day: {
      id: data.id,
      startsAtMinute: minuteOf(data.dayStart),
      minutesPerTick: data.slotMin,
      ticks: data.horizon,
      closes: data.horizon,
      nurses: data.nurse,
      watchedPerNurse: 4,
      chairs: all(data.chairs),
      watchPlaces: all(data.seats),
      preparers: data.prep,
      checkers: data.check,
      visits: data.patients.map(visitOf),
    },
  };
}

export type DayWritten =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly problems: readonly FormatProblem[] };

/** The infusion ticks of a visit whose chain is the format's own; undefined for any other. */
function infusionTicksOf(visit: Visit): number | undefined {
  const infusion = visit.steps.find((step) => step.nurse === 'shared')?.ticks;
  if (infusion === undefined) return undefined;
  const chain = infusionChain(usualStepTicks, infusion, visit.watch === null ? 0 : usualStepTicks.watch);
  const own = { steps: visit.steps, chair: visit.chair, watch: visit.watch, dose: visit.dose };
  return JSON.stringify(own) === JSON.stringify(chain) ? infusion : undefined;
}

const isSameAllDay = (capacity: Capacity): boolean => capacity.every((value) => value === capacity[0]);

/** The day as text, or everything about it that the format has no words for. Names become numbers. */
export function writeDay(day: Day): DayWritten {
  const problems: FormatProblem[] = [];
  if (!isSameAllDay(day.chairs))
    problems.push({ at: 'chairs', says: 'there is one number of chairs for the whole day' });
  if (!isSameAllDay(day.watchPlaces))
    problems.push({ at: 'seats', says: 'there is one number of watch places for the whole day' });
  if (day.closes !== day.ticks) problems.push({ at: 'horizon', says: 'the day cannot go on after the unit closes' });
  if (day.watchedPerNurse !== 4) problems.push({ at: 'nurse', says: 'a nurse keeps an eye on four running infusions' });
  const patients = day.visits.map((visit, id) => {
    const inf = infusionTicksOf(visit);
    if (inf === undefined) problems.push({ at: `patients.${id}`, says: `${visit.name} has another chain of steps` });
    if (!visit.mayWait) problems.push({ at: `patients.${id}`, says: `${visit.name} must not wait` });
    const { earliest: est, latest: lct } = visit;
    return { id, first: visit.watch !== null, inf: inf ?? 0, est, lct, fixedArrival: visit.arrival === 'transport' };
  });
  if (problems.length > 0) return { ok: false, problems };
  const written: z.infer<typeof dayShape> = {
    id: day.id,
    slotMin: day.minutesPerTick,
    dayStart: clockAt(day, 0),
    horizon: day.ticks,
    chairs: day.chairs[0] ?? 0,
    seats: day.watchPlaces[0] ?? 0,
    nurse: [...day.nurses],
    prep: [...day.preparers],
    check: [...day.checkers],
    patients,
  };
  return { ok: true, text: JSON.stringify(written) };
}
