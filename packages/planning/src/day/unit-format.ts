/**
 * A unit's own day as text: times of day, minutes, and people by name. Every field that is not known is refused; only the
 * minutes of the steps may be left out, and then the usual ones stand in and are said to.
 */
import { z } from 'zod';
import { type StepTicks, infusionChain, injectionChain, usualStepTicks } from './chains.ts';
import type { Capacity, Day, Visit } from './day.ts';
import { type FormatProblem, clock, minuteOf, mostTicks, problemsOf } from './format-problem.ts';
import { clockAt } from './time-words.ts';

const count = z.int().nonnegative();
const minutes = z.int().positive();

/** Either a number for the whole day, or who is there from when to when; stretches that overlap add up. */
const present = z.union([count, z.array(z.strictObject({ from: clock, to: clock, count: count.default(1) })).min(1)], {
  error: 'write a whole number for the whole day, or a list such as [{"from": "08:30", "to": "12:30", "count": 2}]',
});
type Present = z.infer<typeof present>;

const stepMinutes = z.strictObject({
  observations: minutes,
  checklist: minutes,
  cannula: minutes,
  preparation: minutes,
  secondCheck: minutes,
  keeps: minutes,
  removal: minutes,
  watch: minutes,
  leave: minutes,
  injection: minutes,
});

const visitShape = z.strictObject({
  name: z.string().min(1),
  kind: z.enum(['first infusion', 'later infusion', 'injection']),
  infusionMinutes: minutes.optional(),
  watchMinutes: z.int().nonnegative().optional(),
  notBefore: clock.optional(),
  goneBy: clock.optional(),
  brought: z.boolean().default(false),
  mayWait: z.boolean().default(true),
});

const dayShape = z.strictObject({
  id: z.string().min(1),
  opens: clock,
  closes: clock,
  mayRunTo: clock.optional(),
  gridMinutes: minutes,
  nurses: present,
  watchedPerNurse: minutes,
  chairs: present,
  watchPlaces: present,
  preparers: present,
  secondCheckers: present,
  minutes: stepMinutes.optional(),
  onTimePercent: z.int().min(50).max(99).optional(),
  visits: z.array(visitShape).min(1),
});

/** A day as a unit writes it. */
export type UnitDayWritten = z.input<typeof dayShape>;

export type UnitDayRead =
  | { readonly ok: true; readonly day: Day; readonly hasUsualMinutes: boolean }
  | { readonly ok: false; readonly problems: readonly FormatProblem[] };

/** Times and minutes as ticks; what does not fall on the grid is a problem of its own. */
type Grid = {
  readonly at: (field: string, time: string) => number;
  readonly ticks: (field: string, length: number) => number;
};

const usualGridMinutes = 5;

function gridFrom(opens: string, gridMinutes: number, problems: FormatProblem[]): Grid {
  const start = { startsAtMinute: minuteOf(opens), minutesPerTick: gridMinutes } as Day;
  return {
    at(field, time) {
      const tick = (minuteOf(time) - minuteOf(opens)) / gridMinutes;
      const below = Math.floor(tick);
      if (tick < 0)
        problems.push({ at: field, says: `${time} is before the day begins at ${opens}: write a later time` });
      else if (tick !== below)
        problems.push({
          at: field,
          says: `${time} is not on the grid of ${gridMinutes} minutes: write ${clockAt(start, below)} or ${clockAt(start, below + 1)}`,
        });
      return below;
    },
    ticks(field, length) {
      if (length % gridMinutes !== 0)
        problems.push({
          at: field,
          says: `${length} minutes are not a multiple of gridMinutes, ${gridMinutes}: change one of them`,
        });
      return Math.ceil(length / gridMinutes);
    },
  };
}

function capacityOf(field: string, who: Present, ticks: number, grid: Grid, problems: FormatProblem[]): Capacity {
  if (typeof who === 'number') return Array.from({ length: ticks }, () => who);
  const there = Array.from({ length: ticks }, () => 0);
  who.forEach((stretch, index) => {
    const from = grid.at(`${field}.${index}.from`, stretch.from);
    const to = grid.at(`${field}.${index}.to`, stretch.to);
    if (to <= from) problems.push({ at: `${field}.${index}.to`, says: `must be later than ${stretch.from}` });
    for (let tick = Math.max(0, from); tick < Math.min(to, ticks); tick += 1) there[tick]! += stretch.count;
  });
  return there;
}

/** A value for each field of the chain's minutes. */
function stepTicksFrom(given: z.infer<typeof stepMinutes> | undefined, grid: Grid): StepTicks {
  const ticksFor = (name: keyof StepTicks): number =>
    grid.ticks(`minutes.${name}`, given?.[name] ?? usualStepTicks[name] * usualGridMinutes);
  const names = Object.keys(usualStepTicks) as (keyof StepTicks)[];
  return Object.fromEntries(names.map((name) => [name, ticksFor(name)])) as StepTicks;
}

function visitFrom(
  visit: z.infer<typeof visitShape>,
  at: string,
  { steps, ends, grid, problems }: { steps: StepTicks; ends: number; grid: Grid; problems: FormatProblem[] },
): Visit {
  const { name, kind, infusionMinutes, watchMinutes, notBefore, goneBy, brought, mayWait } = visit;
  const isInjection = kind === 'injection';
  if (isInjection !== (infusionMinutes === undefined))
    problems.push({
      at: `${at}.infusionMinutes`,
      says: isInjection ? 'an injection has none: leave it out' : 'is missing: write the minutes the prescription runs',
    });
  const earliest = notBefore === undefined ? 0 : grid.at(`${at}.notBefore`, notBefore);
  const latest = goneBy === undefined ? ends : grid.at(`${at}.goneBy`, goneBy);
  if (latest <= earliest) problems.push({ at: `${at}.goneBy`, says: 'must be later than notBefore' });
  if (latest > ends)
    problems.push({ at: `${at}.goneBy`, says: 'is after the day ends: write an earlier time, or a later mayRunTo' });
  if (brought && notBefore === undefined)
    problems.push({ at: `${at}.notBefore`, says: 'is missing: write when the transport brings the person' });
  if (isInjection && watchMinutes !== undefined)
    problems.push({ at: `${at}.watchMinutes`, says: 'an injection has none: leave it out' });
  const usualWatch = kind === 'first infusion' ? steps.watch : 0;
  const chain = isInjection
    ? injectionChain(steps)
    : infusionChain(
        steps,
        grid.ticks(`${at}.infusionMinutes`, infusionMinutes ?? 0),
        watchMinutes === undefined ? usualWatch : grid.ticks(`${at}.watchMinutes`, watchMinutes),
      );
  return { name, ...chain, earliest, latest, arrival: brought ? 'transport' : 'free', mayWait };
}

function sameNames(visits: readonly { readonly name: string }[]): FormatProblem[] {
  const names = visits.map(({ name }) => name);
  return names.flatMap((name, index) =>
    names.indexOf(name) === index
      ? []
      : [{ at: `visits.${index}.name`, says: `there are two of "${name}": tell them apart` }],
  );
}

export function readUnitDay(json: unknown): UnitDayRead {
  const read = dayShape.safeParse(json);
  if (!read.success) return { ok: false, problems: problemsOf(read.error) };
  const { data } = read;
  const problems = sameNames(data.visits);
  const grid = gridFrom(data.opens, data.gridMinutes, problems);
  const closes = grid.at('closes', data.closes);
  const ends = data.mayRunTo === undefined ? closes : grid.at('mayRunTo', data.mayRunTo);
  if (closes <= 0) problems.push({ at: 'closes', says: `must be later than ${data.opens}` });
  if (ends < closes) problems.push({ at: 'mayRunTo', says: `must not be before ${data.closes}, when the unit closes` });
  if (problems.length > 0 || ends > mostTicks) return { ok: false, problems };
  const steps = stepTicksFrom(data.minutes, grid);
  const capacity = (field: 'nurses' | 'chairs' | 'watchPlaces' | 'preparers' | 'secondCheckers'): Capacity =>
    capacityOf(field, data[field], ends, grid, problems);
  const day: Day = {
    id: data.id,
    startsAtMinute: minuteOf(data.opens),
    minutesPerTick: data.gridMinutes,
    ticks: ends,
    closes,
    nurses: capacity('nurses'),
    watchedPerNurse: data.watchedPerNurse,
    chairs: capacity('chairs'),
    watchPlaces: capacity('watchPlaces'),
    preparers: capacity('preparers'),
    checkers: capacity('secondCheckers'),
    onTimePercent: data.onTimePercent,
    visits: data.visits.map((visit, index) => visitFrom(visit, `visits.${index}`, { steps, ends, grid, problems })),
  };
  return problems.length > 0 ? { ok: false, problems } : { ok: true, day, hasUsualMinutes: data.minutes === undefined };
}
