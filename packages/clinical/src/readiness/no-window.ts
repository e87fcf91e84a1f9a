/** Why there is no window, who can settle it, and the window if each matter were settled today in the person's favour (A4). */
import type { Day } from '../calendar/day.ts';
import type { RequirementId } from '../protocol/requirement-ids.ts';
import { losesWeightDecision, weightBlocker } from '../requirements/kidney-path.ts';
import type { Evidence } from '../requirements/evidence.ts';
import type { Blocker } from '../requirements/requirement.ts';
import { type Plan, firstPlan, pathOn, pathRestsOn } from './plan.ts';
import type { NextStep, NoWindow } from './readiness.ts';
import { stepsOf } from './steps.ts';
import { afterPlan } from './window.ts';
import { type World, judgeOn, nextChange, protocolOn, runFrom, withEvidence } from './world.ts';

type Need = { readonly requirement: RequirementId; readonly by: Blocker };

/** How one requirement fares alone: the first day it could hold, and what blocks it where it never can. */
type Alone = {
  readonly requirement: RequirementId;
  readonly first: Day | undefined;
  readonly by: Blocker | undefined;
  readonly waits: string | undefined;
};

function aloneIn(world: World, requirement: RequirementId): Alone {
  let by: Blocker | undefined;
  let waits: string | undefined;
  const restsOn = pathRestsOn(requirement);
  for (let day: Day | undefined = world.today; day !== undefined; day = nextChange(world, restsOn, day)) {
    const path = pathOn(world, requirement, day);
    if (path.is === 'ready' || path.is === 'steps') return { requirement, first: day, by: undefined, waits: undefined };
    if (path.is === 'blocked') by ??= path.by;
    else if (path.is === 'waiting') waits ??= path.what;
  }
  return { requirement, first: undefined, by, waits };
}

/** The matters that block: those that block on every day, and those that block by the day the others could be reached. */
function blockersOf(world: World): Need[] {
  const alone = world.order.map((id) => aloneIn(world, id));
  const reached = alone.reduce<Day>(
    (latest, { first }) => (first !== undefined && first > latest ? first : latest),
    world.today,
  );
  const needs: Need[] = [];
  for (const { requirement, by, first } of alone) {
    if (first === undefined) {
      if (by !== undefined) needs.push({ requirement, by });
      continue;
    }
    const path = pathOn(world, requirement, reached);
    if (path.is === 'blocked') needs.push({ requirement, by: path.by });
  }
  const protocol = protocolOn(world, reached);
  if (needs.length === 0 && protocol !== undefined && losesWeightDecision(world.evidence, protocol, reached)) {
    needs.push({ requirement: 'kidney-function', by: weightBlocker });
  }
  return needs;
}

export type Unsettled = { readonly noWindow: NoWindow; readonly steps: readonly NextStep[] };

export function unsettled(world: World): Unsettled {
  const needs: Need[] = [];
  let settledWorld: World | undefined = world;
  let plan: Plan | undefined;
  // Settling one matter can uncover another (a prescription that ends before a review's window): at most one round for each.
  for (let round = 0; round < world.order.length && settledWorld !== undefined && plan === undefined; round += 1) {
    const found = blockersOf(settledWorld);
    if (found.length === 0) break;
    needs.push(...found);
    settledWorld = settle(settledWorld, found);
    plan = settledWorld === undefined ? undefined : firstPlan(settledWorld);
  }
  const steps: NextStep[] = needs
    .filter(
      ({ by, requirement }) =>
        !(
          by.step === 'repeat result' &&
          by.who === 'nurse' &&
          plan?.draw?.tests.some((test) => test.requirement === requirement)
        ),
    )
    .map(({ requirement, by }) => ({
      kind: by.step,
      what: by.what,
      who: by.who,
      earliest: world.today,
      latest: undefined,
      effectFrom: world.today,
      assumed: false,
      serves: [requirement],
      why: judgeOn(world, requirement, world.today).on(world.today).cause,
    }));
  if (plan !== undefined && settledWorld !== undefined)
    steps.push(...stepsOf(settledWorld, saidBy(needs, plan), plan.on, false));
  return {
    noWindow: {
      needs:
        needs.length > 0
          ? inOrder(world, needs).map(({ requirement, by }) => ({ requirement, what: by.what, who: by.who }))
          : neverTogether(world),
      ifSettled:
        plan === undefined || settledWorld === undefined
          ? undefined
          : {
              first: plan.on,
              last: runFrom(afterPlan(settledWorld, plan), plan.on),
            },
    },
    steps: eachOnce(steps),
  };
}

/** A repeat is drawn because the matter is to be settled, not because nothing was ever measured. */
function saidBy(needs: readonly Need[], plan: Plan): Plan {
  if (plan.draw === undefined) return plan;
  const tests = plan.draw.tests.map((test) => ({
    ...test,
    why: needs.find(({ requirement }) => requirement === test.requirement)?.by.what ?? test.why,
  }));
  return { ...plan, draw: { ...plan.draw, tests } };
}

/** One step that serves two requirements is said once. */
function eachOnce(steps: readonly NextStep[]): NextStep[] {
  const said = new Map<string, NextStep>();
  for (const step of steps) {
    const key = `${step.kind} ${step.what}`;
    const before = said.get(key);
    said.set(key, before === undefined ? step : { ...before, serves: [...before.serves, ...step.serves] });
  }
  return [...said.values()];
}

function inOrder(world: World, needs: readonly Need[]): Need[] {
  return needs.toSorted((a, b) => world.order.indexOf(a.requirement) - world.order.indexOf(b.requirement));
}

function settle(world: World, needs: readonly Need[]): World | undefined {
  let change: Partial<Evidence> = {};
  for (const { by } of needs) {
    if (by.settled === undefined) return undefined;
    change = { ...change, ...by.settled({ ...world.evidence, ...change }) };
  }
  return withEvidence(world, change);
}

/** Nothing blocks, yet no day serves all: what is waited for longest is named. */
function neverTogether(world: World): NoWindow['needs'] {
  const alone = world.order.map((id) => aloneIn(world, id));
  const never = alone.find(({ first }) => first === undefined);
  if (never !== undefined)
    return [
      {
        requirement: never.requirement,
        what: `${never.waits ?? never.requirement}: look again nearer the date`,
        who: 'nurse',
      },
    ];
  const slowest = alone.reduce<Alone | undefined>(
    (latest, one) => (latest?.first === undefined || (one.first ?? 0) > latest.first ? one : latest),
    undefined,
  );
  return slowest === undefined
    ? []
    : [
        {
          requirement: slowest.requirement,
          what: 'no date within the days looked ahead serves everything: look again nearer the date',
          who: 'nurse',
        },
      ];
}
