/** A plan as steps: what, who, from when, by when, why (docs/readiness.md A3, A5). */
import { type Day, addDays, shortDate } from '../calendar/day.ts';
import { lastBloodDay } from '../calendar/unit-calendar.ts';
import { counted, plural } from '../kinds-texts/words.ts';
import type { Plan } from './plan.ts';
import type { NextStep } from './readiness.ts';
import { lastDraw } from './window.ts';
import { type World, protocolOn } from './world.ts';

/** Steps of a plan; the latest dates are those that still serve `target`, the first day of the window or the booked place. */
export function stepsOf(world: World, plan: Plan, target: Day, assumed: boolean): NextStep[] {
  return [
    ...loadingSteps(world, plan, target, assumed),
    ...drawSteps(world, plan, target, assumed),
    ...otherSteps(world, plan, target, assumed),
  ];
}

/** There are three or four of them: looked through sooner than put into a set. */
const eachOnce = <T>(all: readonly T[]): readonly T[] => all.filter((one, index) => all.indexOf(one) === index);

function drawSteps(world: World, plan: Plan, target: Day, assumed: boolean): NextStep[] {
  const { draw, weigh } = plan;
  if (draw === undefined) return [];
  const needs = weigh === undefined ? draw.tests : [...draw.tests, weigh];
  return [
    {
      kind: 'draw',
      what: `take bloods (${plural(
        draw.tests.map(({ test }) => test),
        'and',
      )}) and weigh`,
      who: 'nurse',
      earliest: draw.on,
      latest: lastDraw(world, target, draw.on),
      effectFrom: draw.usable,
      assumed,
      serves: eachOnce(needs.map(({ requirement }) => requirement)),
      tests: draw.tests.map(({ test }) => test),
      why: eachOnce(needs.map(({ why }) => why)).join('; '),
    },
  ];
}

function loadingSteps(world: World, plan: Plan, target: Day, assumed: boolean): NextStep[] {
  const { load } = plan;
  if (load === undefined) return [];
  const { first, last, count, everyDays } = load;
  const afterDays = protocolOn(world, plan.on)?.number.calciumAfterLoadingDays ?? 0;
  const sampleBy = lastDraw(world, target, last) ?? lastBloodDay(world.context.calendar, target);
  // A dose put off puts off the last one by as much.
  const slack = sampleBy === undefined ? 0 : Math.max(0, sampleBy - afterDays - last);
  return [
    {
      kind: 'loading dose',
      what:
        load.sort === 'new loading'
          ? `prescribe and start vitamin D loading: ${counted(count, 'dose')}, every ${everyDays} days, the last on ${shortDate(last)}`
          : `${counted(count, 'loading dose')} of vitamin D left, every ${everyDays} days, the last on ${shortDate(last)}`,
      who: load.sort === 'new loading' ? 'prescriber' : 'patient',
      earliest: first,
      latest: addDays(first, slack),
      effectFrom: last,
      assumed,
      serves: ['vitamin-d'],
      doses: { count, everyDays, last },
      why: load.why,
    },
  ];
}

const questions = {
  consent: { kind: 'ask consent', what: 'ask for consent' },
  allergies: { kind: 'ask allergies', what: 'ask about allergies' },
  pregnancy: { kind: 'ask pregnancy', what: 'ask about pregnancy and breast-feeding' },
  'teeth and jaw': { kind: 'ask teeth', what: 'ask about teeth and jaw' },
  maintenance: { kind: 'ask maintenance', what: 'ask whether the daily vitamin D is taken' },
  'secondary causes': { kind: 'look for causes', what: 'look for secondary causes and record it' },
} as const;

function otherSteps(world: World, plan: Plan, target: Day, assumed: boolean): NextStep[] {
  const steps: NextStep[] = [];
  if (plan.sign.length > 0) {
    steps.push({
      kind: 'sign results',
      what: 'read and sign the results',
      who: 'nurse',
      earliest: world.today,
      latest: target,
      effectFrom: world.today,
      assumed,
      serves: plan.sign.map(({ requirement }) => requirement),
      why: eachOnce(plan.sign.map(({ why }) => why)).join('; '),
    });
  }
  if (plan.weigh !== undefined && plan.draw === undefined) {
    const { on, requirement, why } = plan.weigh;
    steps.push({
      kind: 'weigh',
      what: 'weigh',
      who: 'nurse',
      earliest: on,
      latest: target,
      effectFrom: on,
      assumed,
      serves: [requirement],
      why,
    });
  }
  for (const { what, on, requirement, why } of plan.ask) {
    steps.push({
      ...questions[what],
      who: 'nurse',
      earliest: on,
      latest: target,
      effectFrom: on,
      assumed,
      serves: [requirement],
      why,
    });
  }
  return steps;
}
