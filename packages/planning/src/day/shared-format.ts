/**
 * Days as text: the format of the shared day instances. One fixed chain, grid of 5 minutes, capacities of staff by tick.
 * What the format cannot say (other chains, rooms that close, people who must not wait) is refused on writing.
 */
import { z } from 'zod';
import type { Capacity, Day, Visit } from './day.ts';
import { infusionChain, usualStepTicks } from './chains.ts';

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
    dayStart: z.string().regex(/^\d\d:\d\d$/),
    horizon: z.int().positive(),
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
        context.addIssue({ code: 'custom', path: [name], message: `has ${day[name].length} numbers, not ${day.horizon}` });
    }
    day.patients.forEach((patient, index) => {
      if (patient.est >= patient.lct || patient.lct > day.horizon)
        context.addIssue({ code: 'custom', path: ['patients', index, 'lct'], message: 'the window is not inside the day' });
    });
  });

export type Problem = { readonly at: string; readonly says: string };
export type DayRead = { readonly ok: true; readonly day: Day } | { readonly ok: false; readonly problems: readonly Problem[] };

const minutesPerHour = 60;

function visitOf(patient: z.infer<typeof visitShape>): Visit {
  return {
    name: `visit ${patient.id + 1}`,
    ...infusionChain(usualStepTicks, patient.inf, patient.first),
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
  const read = dayShape.safeParse(json);
  if (!read.success)
    return { ok: false, problems: read.error.issues.map(({ path, message }) => ({ at: path.join('.'), says: message })) };
  const { data } = read;
  const [hour = 0, minute = 0] = data.dayStart.split(':').map(Number);
  const all = (value: number): Capacity => Array.from({ length: data.horizon }, () => value);
  return {
    ok: true,
    day: {
      id: data.id,
      startsAtMinute: hour * minutesPerHour + minute,
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
