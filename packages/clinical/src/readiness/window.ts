/** The window: first day, last day, what it waits for, what ends it, what one more step would add (docs/readiness.md A3, A5). */
import { type Day, addDays } from '../calendar/day.ts';
import { lastBloodDay, usableFrom } from '../calendar/unit-calendar.ts';
import { scaledText } from '../exact/decimal.ts';
import { plural } from '../kinds-texts/words.ts';
import { outcomeOf } from './after-plan.ts';
import { type Plan, firstPlan, isEmpty, planFor, resultDays } from './plan.ts';
import type { Window } from './readiness.ts';
import { waitingFor } from './waiting.ts';
import { type World, judgeOn, protocolOn, runFrom, withEvidence, withSettled } from './world.ts';

/** The dates of a window alone, for who asks about thousands. */
export const datesOf = (world: World, plan: Plan): Pick<Window, 'first' | 'last'> => ({
  first: plan.on,
  last: runFrom(afterPlan(world, plan), plan.on),
});

export const afterPlan = (world: World, plan: Plan): World =>
  isEmpty(plan) ? world : withEvidence(world, outcomeOf(plan, world.evidence));

export const windowOf = (world: World, plan: Plan): Window => new FoundWindow(world, plan);

/**
 * Lists of many people ask for the dates alone: what only one person's page shows is worked out when it is read. A class, for
 * its getters lie on the prototype: written into an object literal, each object would get a hidden class of its own, which
 * holds the whole world it was made from until the next full garbage collection (half the time of a readiness went there).
 */
class FoundWindow implements Window {
  readonly first: Day;
  readonly last: Day | undefined;
  readonly certain: boolean;
  readonly certainUntil: Day | undefined;
  readonly waitingFor: Window['waitingFor'];
  readonly runsOut: Window['runsOut'];
  readonly #world: World;
  readonly #after: World;
  readonly #plan: Plan;
  #next: Made<Window['next']>;
  #runOn: Made<Window['runOn']>;
  #otherwise: Made<Window['otherwise']>;

  constructor(world: World, plan: Plan) {
    this.#world = world;
    this.#plan = plan;
    this.certain = isEmpty(plan);
    this.#after = afterPlan(world, plan);
    this.first = plan.on;
    this.last = runFrom(this.#after, plan.on);
    this.certainUntil = this.certain ? (this.last ?? world.horizon) : undefined;
    this.waitingFor = waitingFor(world, plan);
    this.runsOut = this.last === undefined ? undefined : runsOutOn(this.#after, addDays(this.last, 1));
  }

  get next(): Window['next'] {
    return (this.#next ??= { value: nextOf(this.#world, this.waitingFor) }).value;
  }

  get runOn(): Window['runOn'] {
    this.#runOn ??= { value: this.last === undefined ? undefined : runOnOf(this.#after, this.last) };
    return this.#runOn.value;
  }

  get otherwise(): Window['otherwise'] {
    return (this.#otherwise ??= { value: otherwiseOf(this.#world, this.#plan) }).value;
  }
}

/** Undefined: not yet worked out. What was worked out may itself be undefined. */
type Made<T> = { readonly value: T } | undefined;

/** The first day again with the root of the chain settled, and what holds it then. */
function nextOf(world: World, links: Window['waitingFor']): Window['next'] {
  const root = links[0];
  if (root === undefined) return undefined;
  const settled = withSettled(world, root.requirement);
  const plan = firstPlan(settled);
  if (plan === undefined) return undefined;
  return { first: plan.on, what: waitingFor(settled, plan)[0]?.what ?? 'nothing more' };
}

function runsOutOn(world: World, day: Day): Window['runsOut'] {
  for (const requirement of world.order) {
    const { verdict, cause } = judgeOn(world, requirement, day).on(day);
    if (verdict === 'not ready' || verdict === 'cannot say') return { requirement, cause };
  }
  return undefined;
}

/** One more step that would carry the run past its last day without a gap: a draw, a weighing, a question; undefined if none does alone. */
function runOnOf(after: World, last: Day): Window['runOn'] {
  const day = addDays(last, 1);
  const plan = day > after.horizon ? undefined : planFor(after, day);
  if (plan === undefined || plan.load !== undefined || plan.sign.length > 0) return undefined;
  if (plan.ask.length + (plan.draw === undefined && plan.weigh === undefined ? 0 : 1) !== 1) return undefined;
  const question = plan.ask[0];
  if (question !== undefined) {
    return {
      what: `asking about ${question.what}`,
      by: day,
      last: runFrom(afterPlan(after, { ...plan, ask: [{ ...question, on: day }] }), day),
    };
  }
  if (plan.draw === undefined) {
    if (plan.weigh === undefined) return undefined;
    return {
      what: 'a weight',
      by: day,
      last: runFrom(afterPlan(after, { ...plan, weigh: { ...plan.weigh, on: day } }), day),
    };
  }
  const by = lastDraw(after, day, plan.draw.on);
  if (by === undefined) return undefined;
  const late: Plan = { ...plan, draw: { ...plan.draw, on: by, usable: day } };
  return {
    what: `a draw (${plural(
      plan.draw.tests.map(({ test }) => test),
      'and',
    )})`,
    by,
    last: runFrom(afterPlan(after, late), day),
  };
}

/** The last blood day whose result is in by a day, none before `earliest`. */
export function lastDraw(world: World, day: Day, earliest: Day): Day | undefined {
  const { calendar } = world.context;
  const result = resultDays(world, day);
  for (
    let on = lastBloodDay(calendar, day, earliest);
    on !== undefined;
    on = lastBloodDay(calendar, addDays(on, -1), earliest)
  ) {
    if (usableFrom(calendar, on, result) <= day) return on;
    if (on <= earliest) return undefined;
  }
  return undefined;
}

/** What follows if a value never measured does not come out well. */
function otherwiseOf(world: World, plan: Plan): Window['otherwise'] {
  const protocol = protocolOn(world, plan.on);
  const { draw } = plan;
  if (protocol === undefined) return [];
  const branches: { when: string; first: Day | undefined }[] = [];
  const { clearanceFloor, calciumLow, calciumHigh, vitaminDFloor } = protocol.exact;
  const unknownWeight = plan.weigh?.neverMeasured === true;
  for (const { test, neverMeasured } of draw?.tests ?? []) {
    if (!neverMeasured || draw === undefined) continue;
    if (test === 'creatinine')
      branches.push({ when: `clearance is below ${scaledText(clearanceFloor)} mL/min`, first: undefined });
    if (test === 'calcium')
      branches.push({
        when: `calcium is outside ${scaledText(calciumLow)} - ${scaledText(calciumHigh)} mmol/L`,
        first: undefined,
      });
    if (test === 'vitamin D')
      branches.push({ when: `vitamin D is below ${scaledText(vitaminDFloor)} nmol/L`, first: firstIfLow(world, plan) });
  }
  if (unknownWeight && !branches.some(({ when }) => when.startsWith('clearance'))) {
    branches.push({ when: `clearance is below ${scaledText(clearanceFloor)} mL/min`, first: undefined });
  }
  return branches;
}

/** The first day if the vitamin D of the plan's draw comes back low: loading starts when the result is in. */
function firstIfLow(world: World, plan: Plan): Day | undefined {
  const { draw } = plan;
  if (draw === undefined) return undefined;
  const after = outcomeOf(plan, world.evidence);
  const level = {
    on: draw.on,
    value: 'assumed low',
    signed: true,
    acute: false,
    contradicted: false,
    entry: undefined,
    limits: undefined,
  } as const;
  return firstPlan(withEvidence(world, { ...after, today: draw.usable, vitaminD: level }))?.on;
}
