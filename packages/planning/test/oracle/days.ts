/** Days to try things on: the shared instances, tiny ones, and any. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import {
  type Day,
  type Plan,
  type Visit,
  infusionChain,
  injectionChain,
  readDay,
  usualStepTicks,
} from '../../src/index.ts';
import type { SharedDay, SharedTimes } from './day-check.ts';

export type StoredBest = { readonly waitMin: number; readonly makespanMin: number; readonly proven: boolean };

export function sharedDay(id: string): { readonly day: Day; readonly raw: SharedDay; readonly best: StoredBest } {
  const text = readFileSync(new URL(`../../../../bench/days/${id}.json`, import.meta.url), 'utf8');
  const read = readDay(text);
  if (!read.ok) throw new Error(read.problems.map(({ at, says }) => `${at}: ${says}`).join('\n'));
  const raw = JSON.parse(text) as SharedDay & { readonly best: StoredBest };
  return { day: read.day, raw, best: raw.best };
}

/** A plan in the shared instances' own words. */
export const sharedTimes = (plan: Plan): (SharedTimes | undefined)[] =>
  plan.map((times) => {
    if (times === null) return undefined;
    const [obs = 0, chk = 0, can = 0, inf = 0, rem = 0] = times.starts;
    const { arrives: arr, preparation, secondCheck, watchedIn } = times;
    return {
      arr,
      obs,
      chk,
      can,
      inf,
      rem,
      dis: times.starts.at(-1) ?? 0,
      prep: preparation ?? 0,
      sec: secondCheck ?? 0,
      chair: watchedIn === 'chair',
    };
  });

export const all = (ticks: number, value: number): number[] => Array.from({ length: ticks }, () => value);

const shortSteps = { ...usualStepTicks, observations: 1, checklist: 0, cannula: 1, preparation: 1, keeps: 2, watch: 2 };

/** An infusion of three or four short steps, so that all plans can be tried. */
export function shortVisit(name: string, more: Partial<Visit> = {}, isFirst = false, infusionTicks = 2): Visit {
  const chain = infusionChain(shortSteps, infusionTicks, isFirst ? shortSteps.watch : 0);
  const [observations, , cannula, infusion, removal, ...rest] = chain.steps;
  if (observations === undefined || cannula === undefined || infusion === undefined || removal === undefined)
    throw new Error('another chain');
  return {
    name,
    steps: [observations, cannula, infusion, removal, ...rest],
    chair: { from: 1, to: 3 },
    watch: isFirst ? 4 : null,
    dose: { before: 2, preparationTicks: 1, secondCheckTicks: 1, keepsTicks: 2 },
    earliest: 0,
    latest: 12,
    arrival: 'free',
    mayWait: true,
    ...more,
  };
}

export const tinyDay = (visits: readonly Visit[], more: Partial<Day> = {}): Day => ({
  id: 'tiny',
  startsAtMinute: 510,
  minutesPerTick: 5,
  ticks: 12,
  closes: 12,
  nurses: all(12, 1),
  watchedPerNurse: 2,
  chairs: all(12, 1),
  watchPlaces: all(12, 1),
  preparers: all(12, 1),
  checkers: all(12, 1),
  visits,
  ...more,
});

const tinyTicks = 14;

const anyShortVisit = fc
  .record({
    earliest: fc.integer({ min: 0, max: 4 }),
    isBrought: fc.boolean(),
    isFirst: fc.boolean(),
    mayWait: fc.boolean(),
    infusionTicks: fc.integer({ min: 1, max: 2 }),
  })
  .map(({ earliest, isBrought, isFirst, mayWait, infusionTicks }) =>
    shortVisit(
      '',
      { earliest, latest: tinyTicks, arrival: isBrought ? 'transport' : 'free', mayWait },
      isFirst,
      infusionTicks,
    ),
  );

/** Two or three short visits, with staff that come and go. */
export const anyTinyDay = fc
  .record({
    visits: fc.array(anyShortVisit, { minLength: 2, maxLength: 3 }),
    nurses: fc.array(fc.integer({ min: 1, max: 2 }), { minLength: tinyTicks, maxLength: tinyTicks }),
    chairs: fc.integer({ min: 1, max: 2 }),
    watchPlaces: fc.integer({ min: 0, max: 1 }),
    breakFrom: fc.integer({ min: 0, max: 12 }),
  })
  .map(({ visits, nurses, chairs, watchPlaces, breakFrom }) =>
    tinyDay(
      visits.map((visit, index) => ({ ...visit, name: `Visit ${index + 1}` })),
      {
        ticks: tinyTicks,
        closes: tinyTicks,
        checkers: all(tinyTicks, 1),
        nurses,
        chairs: all(tinyTicks, chairs),
        watchPlaces: all(tinyTicks, watchPlaces),
        preparers: all(tinyTicks, 1).map((one, tick) => (tick === breakFrom ? 0 : one)),
      },
    ),
  );

const ticks = 102;

/** A day as a unit has it: any of the chains, breaks, windows and transport; often more than can be done. */
export const anyDay = fc
  .record({
    visits: fc.array(
      fc.record({
        chain: fc.constantFrom('first', 'later', 'injection'),
        infusionTicks: fc.integer({ min: 3, max: 6 }),
        earliest: fc.integer({ min: 0, max: 70 }),
        room: fc.integer({ min: -2, max: 60 }),
        isBrought: fc.boolean(),
        mayWait: fc.boolean(),
      }),
      { minLength: 1, maxLength: 14 },
    ),
    nurses: fc.integer({ min: 1, max: 3 }),
    breakFrom: fc.integer({ min: 20, max: 60 }),
    chairs: fc.integer({ min: 1, max: 4 }),
    watchPlaces: fc.integer({ min: 0, max: 2 }),
    checkers: fc.integer({ min: 0, max: 1 }),
  })
  .map(({ visits, nurses, breakFrom, chairs, watchPlaces, checkers }): Day => {
    const withBreak = (count: number): number[] =>
      all(ticks, count).map((value, tick) => (tick >= breakFrom && tick < breakFrom + 6 ? value - 1 : value));
    return {
      id: 'any',
      startsAtMinute: 510,
      minutesPerTick: 5,
      ticks,
      closes: 96,
      nurses: withBreak(nurses),
      watchedPerNurse: 4,
      chairs: all(ticks, chairs),
      watchPlaces: all(ticks, watchPlaces),
      preparers: withBreak(1),
      checkers: all(ticks, checkers),
      visits: visits.map(({ chain, infusionTicks, earliest, room, isBrought, mayWait }, index) => {
        const parts =
          chain === 'injection'
            ? injectionChain(usualStepTicks)
            : infusionChain(usualStepTicks, infusionTicks, chain === 'first' ? usualStepTicks.watch : 0);
        const care = parts.steps.reduce((sum, step) => sum + step.ticks, 0);
        return {
          name: `Visit ${index + 1}`,
          ...parts,
          earliest,
          latest: Math.min(ticks, Math.max(earliest + 1, earliest + care + room)),
          arrival: isBrought ? 'transport' : 'free',
          mayWait,
        };
      }),
    };
  });
