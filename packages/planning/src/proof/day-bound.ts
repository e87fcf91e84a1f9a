/**
 * How good a plan of this day can be at best, by proof: the least waiting, and the earliest finish at that waiting. A question
 * that turns out possible hands back the better plan it found.
 */
import type { Day } from '../day/day.ts';
import { type Objective, compareObjectives, objectiveOf } from '../plan/objective.ts';
import type { Plan } from '../plan/plan.ts';
import { planFrom, problemOf } from '../search/problem.ts';
import { type Question, dayModel, timesFrom } from './day-model.ts';
import { decide } from './decide.ts';

export type BoundLimit = {
  /** Contradictions met in all before giving up. */
  readonly contradictions: number;
  readonly stop?: () => boolean;
};

export type DayBound = {
  /** No plan that sees everyone can be better than this; the fields after one that is not reached say nothing. */
  readonly atLeast: Objective;
  /** The plan asked about, or a better one met on the way. */
  readonly plan: Plan;
  readonly objective: Objective;
  /** The plan is the best there is. */
  readonly isProven: boolean;
  readonly contradictions: number;
};

type Search = { readonly day: Day; plan: Plan; objective: Objective; spent: number };

/** The bound for a plan that sees everyone; a plan that does not is handed back with nothing proven. */
export function boundFor(day: Day, plan: Plan, limit: BoundLimit): DayBound {
  const search: Search = { day, plan, objective: objectiveOf(day, plan), spent: 0 };
  const atLeast = { unseen: 0, overtime: 0, wait: 0, finish: 0 };
  const result = (isProven: boolean): DayBound => ({
    atLeast,
    plan: search.plan,
    objective: search.objective,
    isProven,
    contradictions: search.spent,
  });
  if (search.objective.unseen > 0) return result(false);
  const allWait = day.ticks * day.visits.length;
  const closing = (): number => Math.min(day.ticks, day.closes + search.objective.overtime);
  const overtime = climb(
    search,
    limit,
    atLeast.overtime,
    () => search.objective.overtime,
    (value) => ({
      mostWait: allWait,
      finishBy: day.closes + value,
    }),
  );
  atLeast.overtime = overtime;
  if (overtime < search.objective.overtime) return result(false);
  atLeast.wait = climb(
    search,
    limit,
    0,
    () => search.objective.wait,
    (value) => ({ mostWait: value, finishBy: closing() }),
  );
  if (atLeast.wait < search.objective.wait) return result(false);
  const soonest = soonestFinish(day);
  atLeast.finish = climb(
    search,
    limit,
    soonest,
    () => search.objective.finish,
    (value) => ({
      mostWait: search.objective.wait,
      finishBy: value,
    }),
  );
  return result(atLeast.finish >= search.objective.finish);
}

/** The longest of "not before" and care: nobody's visit can end sooner. */
const soonestFinish = (day: Day): number =>
  day.visits.reduce(
    (latest, visit) => Math.max(latest, visit.earliest + visit.steps.reduce((sum, step) => sum + step.ticks, 0)),
    0,
  );

/**
 * The smallest value that is not proven impossible, from `least` up. First the value just below the plan's own, because one
 * answer there settles everything; if none comes, quick questions from below, in steps that grow while they are answered.
 */
function climb(
  search: Search,
  limit: BoundLimit,
  least: number,
  current: () => number,
  questionOf: (value: number) => Question,
): number {
  while (least < current()) {
    const most = Math.ceil((limit.contradictions - search.spent) * shareOfFirst);
    const answer = ask(search, limit, questionOf(current() - 1), most);
    if (answer === 'impossible') return current();
    if (answer === 'not known') break;
  }
  let atLeast = Math.min(least, current());
  for (let step = 1; atLeast < current();) {
    const asked = Math.min(atLeast + step, current()) - 1;
    if (ask(search, limit, questionOf(asked), quick) === 'impossible') {
      atLeast = asked + 1;
      step *= 2;
    } else if (step === 1) break;
    else step = 1;
  }
  return atLeast;
}

/** How much of the limit the question that would settle everything may use. */
const shareOfFirst = 0.7;

/** The most contradictions a quick question may use. */
const quick = 400;

function ask(
  search: Search,
  limit: BoundLimit,
  question: Question,
  most: number,
): 'impossible' | 'possible' | 'not known' {
  const left = Math.min(most, limit.contradictions - search.spent);
  if (left <= 0 || limit.stop?.() === true) return 'not known';
  const problem = problemOf(search.day);
  const built = dayModel(problem, question);
  const decision = decide(built.model, {
    contradictions: left,
    ...(limit.stop === undefined ? {} : { stop: limit.stop }),
  });
  search.spent += decision.contradictions;
  if (decision.answer !== 'possible') return decision.answer;
  const plan = planFrom(search.day, timesFrom(problem, built, decision.values));
  const objective = objectiveOf(search.day, plan);
  if (compareObjectives(objective, search.objective) >= 0)
    throw new Error('a plan that answers a question must be better');
  search.plan = plan;
  search.objective = objective;
  return 'possible';
}

export type SeeAll =
  | { readonly answer: 'possible'; readonly plan: Plan }
  | { readonly answer: 'impossible' | 'not known' };

/** Whether everyone can be seen at all, however long they wait. */
export function seeAll(day: Day, contradictions: number): SeeAll {
  const problem = problemOf(day);
  const built = dayModel(problem, { mostWait: day.ticks * day.visits.length, finishBy: day.ticks });
  const decision = decide(built.model, { contradictions });
  if (decision.answer !== 'possible') return { answer: decision.answer };
  return { answer: 'possible', plan: planFrom(day, timesFrom(problem, built, decision.values)) };
}
