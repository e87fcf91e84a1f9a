/**
 * The least that must be done so that every requirement holds on a day, and the first day for which such a plan exists
 * (docs/readiness.md A2, A3). At most one draw of blood; every step on the earliest day on which it serves.
 */
import { type Day, addDays } from '../calendar/day.ts';
import { type ResultDays, firstBloodDay, usableFrom } from '../calendar/unit-calendar.ts';
import type { RequirementId } from '../protocol/requirement-ids.ts';
import { losesWeightDecision } from '../requirements/kidney-path.ts';
import type { LoadingPlan } from '../requirements/loading.ts';
import type { Needs, Path } from '../requirements/requirement.ts';
import { type World, judgeOn, nextChange, protocolOn, samplesCountOn } from './world.ts';

export type NeedOf<Key extends keyof Needs> = NonNullable<Needs[Key]> & { readonly requirement: RequirementId };

export type Plan = {
  readonly on: Day;
  readonly draw: { readonly on: Day; readonly usable: Day; readonly tests: readonly NeedOf<'draw'>[] } | undefined;
  /** The weight that serves the day: at the draw if there is one, else on a day of its own. */
  readonly weigh: (NeedOf<'weigh'> & { readonly on: Day }) | undefined;
  readonly load: (LoadingPlan & NeedOf<'load'>) | undefined;
  readonly sign: readonly NeedOf<'sign'>[];
  readonly ask: readonly (NeedOf<'ask'> & { readonly on: Day })[];
};

export const isEmpty = (plan: Plan): boolean =>
  plan.draw === undefined &&
  plan.weigh === undefined &&
  plan.load === undefined &&
  plan.sign.length === 0 &&
  plan.ask.length === 0;

export const resultDays = (world: World, day: Day): ResultDays => ({
  days: protocolOn(world, day)?.number.resultDays ?? 0,
  counted: protocolOn(world, day)?.sheet.resultDaysCounted ?? 'calendar days',
});

/** When a loading that a path on the day relies on ends. */
function loadingEndsOn(world: World, day: Day): Day | undefined {
  const path = judgeOn(world, 'vitamin-d', day).path(day);
  return path.is === 'steps' ? path.needs.load?.last : undefined;
}

/** Only calcium asks when a loading ends: it is measured again after it. */
const asksWhenLoadingEnds = (id: RequirementId): boolean => id === 'calcium';

export const pathOn = (world: World, id: RequirementId, day: Day): Path =>
  judgeOn(world, id, day).path(day, asksWhenLoadingEnds(id) ? loadingEndsOn(world, day) : undefined);

/** The requirements whose changes may change the path of one. */
export const pathRestsOn = (id: RequirementId): readonly RequirementId[] =>
  asksWhenLoadingEnds(id) ? [id, 'vitamin-d'] : [id];

type Needed = { readonly requirement: RequirementId; readonly needs: Needs };
/** Everything needed on the day, or the first requirement that has no path then. */
type Found = { readonly needed: readonly Needed[] } | { readonly stuck: RequirementId };

function needsOn(world: World, day: Day): Found {
  const needed: Needed[] = [];
  for (const requirement of world.order) {
    const path = pathOn(world, requirement, day);
    if (path.is === 'blocked' || path.is === 'waiting') return { stuck: requirement };
    if (path.is === 'steps') needed.push({ requirement, needs: path.needs });
  }
  return { needed };
}

/** The earliest day on which one draw serves all of these on `day`, with its result in; undefined if there is none. */
export function drawDay(
  world: World,
  day: Day,
  tests: readonly NonNullable<Needs['draw']>[],
  weigh: Needs['weigh'],
): { readonly on: Day; readonly usable: Day } | undefined {
  const count = samplesCountOn(world, day);
  if (count.from === 'none') return undefined;
  let from = Math.max(world.today, count.from === 'any' ? world.today : count.from);
  for (const { validDays, notBefore } of tests) from = Math.max(from, day - validDays, notBefore ?? from);
  if (weigh !== undefined) from = Math.max(from, day - weigh.validDays);
  const { calendar } = world.context;
  const on = firstBloodDay(calendar, from as Day, day);
  if (on === undefined) return undefined;
  const usable = usableFrom(calendar, on, resultDays(world, day));
  return usable <= day ? { on, usable } : undefined;
}

/** The plan for one day; undefined where there is none. */
export function planFor(world: World, day: Day): Plan | undefined {
  const found = needsOn(world, day);
  return 'stuck' in found ? undefined : planWith(world, day, found.needed);
}

function planWith(world: World, day: Day, all: readonly Needed[]): Plan | undefined {
  const tests: NeedOf<'draw'>[] = [];
  const sign: NeedOf<'sign'>[] = [];
  const ask: (NeedOf<'ask'> & { on: Day })[] = [];
  let weigh: NeedOf<'weigh'> | undefined;
  let load: Plan['load'];
  for (const { requirement, needs } of all) {
    if (needs.draw !== undefined) tests.push({ ...needs.draw, requirement });
    if (needs.sign !== undefined) sign.push({ ...needs.sign, requirement });
    if (needs.weigh !== undefined) weigh = { ...needs.weigh, requirement };
    if (needs.load !== undefined) load = { ...needs.load, requirement };
    if (needs.ask !== undefined) {
      const { validDays, notBefore } = needs.ask;
      ask.push({
        ...needs.ask,
        requirement,
        on: Math.max(
          world.today,
          notBefore ?? world.today,
          validDays === undefined ? world.today : day - validDays,
        ) as Day,
      });
    }
  }
  let draw: Plan['draw'];
  if (tests.length > 0) {
    const found = drawDay(world, day, tests, weigh);
    if (found === undefined) return undefined;
    draw = { ...found, tests };
    const protocol = protocolOn(world, day);
    if (protocol === undefined || losesWeightDecision(world.evidence, protocol, day)) return undefined;
  }
  const weighOn = weigh === undefined ? undefined : (draw?.on ?? (Math.max(world.today, day - weigh.validDays) as Day));
  return {
    on: day,
    draw,
    weigh: weigh === undefined || weighOn === undefined ? undefined : { ...weigh, on: weighOn },
    load,
    sign,
    ask,
  };
}

/** The first day, from `from` to the horizon, for which there is a plan. */
export function firstPlan(world: World, from: Day = world.today): Plan | undefined {
  for (let start: Day | undefined = from; start !== undefined;) {
    const found = needsOn(world, start);
    if ('stuck' in found) {
      // Nothing else matters until this one changes.
      start = nextChange(world, pathRestsOn(found.stuck), start);
      continue;
    }
    const plan = planWith(world, start, found.needed);
    if (plan !== undefined) return plan;
    const next = nextChange(world, world.order, start);
    // Only a draw can make a later day of the same stretch possible where its first is not.
    const tests = found.needed.flatMap(({ needs }) => (needs.draw === undefined ? [] : [needs.draw]));
    if (tests.length > 0) {
      const end = next === undefined ? world.horizon : addDays(next, -1);
      const later = firstWithDraw(world, start, end, tests);
      if (later !== undefined) return later;
    }
    start = next;
  }
  return undefined;
}

function firstWithDraw(
  world: World,
  start: Day,
  end: Day,
  tests: readonly NonNullable<Needs['draw']>[],
): Plan | undefined {
  const count = samplesCountOn(world, start);
  const protocol = protocolOn(world, start);
  // Neither changes within a stretch.
  if (count.from === 'none' || protocol === undefined || losesWeightDecision(world.evidence, protocol, start))
    return undefined;
  const from = Math.max(
    world.today,
    count.from === 'any' ? world.today : count.from,
    ...tests.map(({ notBefore }) => notBefore ?? world.today),
  ) as Day;
  const on = firstBloodDay(world.context.calendar, from, end);
  if (on === undefined) return undefined;
  for (
    let day = Math.max(start, usableFrom(world.context.calendar, on, resultDays(world, start))) as Day;
    day <= end;
    day = addDays(day, 1)
  ) {
    const plan = planFor(world, day);
    if (plan !== undefined) return plan;
  }
  return undefined;
}
