/**
 * The question "can everyone be seen, waiting at most so long in all and leaving by then?" as whole numbers with rules. If
 * nobody may wait, a visit is one number, its arrival; otherwise every step has its own.
 */
import { ARRIVES, CHECK, IN_WATCH_PLACE, LEAVES, PREPARATION, type Problem, stride } from '../search/problem.ts';
import { type Use, capacityRule } from './capacity-rule.ts';
import type { Model } from './decide.ts';
import { energyRule } from './energy-rule.ts';
import { addOrder, noOrders, type Orders } from './order-rule.ts';
import type { Rule } from './rule.ts';
import { type Term, sumRule } from './sum-rule.ts';
import { ALWAYS, addVariable, closeVariables, type VariableList } from './trail.ts';

export type Question = { readonly mostWait: number; readonly finishBy: number };

/** A moment as a variable plus an offset; a fixed moment has its own variable with one value. */
type Moment = { readonly variable: number; readonly offset: number };

type VisitMoments = {
  readonly arrives: Moment;
  readonly steps: readonly Moment[];
  readonly preparation: Moment | null;
  readonly check: Moment | null;
  /** 1 watched in a watch place; -1 where there is no choice to make. */
  readonly inPlace: number;
  readonly wait: number;
};

type Building = {
  readonly problem: Problem;
  readonly list: VariableList;
  readonly pairs: [first: Moment, distance: number, second: Moment][];
  readonly rules: Rule[];
};

const plus = (moment: Moment, ticks: number): Moment => ({ variable: moment.variable, offset: moment.offset + ticks });

function before(building: Building, first: Moment, distance: number, second: Moment): void {
  if (first.variable !== second.variable) building.pairs.push([first, distance, second]);
}

function stepMoments(building: Building, visit: number, mostWait: number, leaveBy: number): Moment[] {
  const { problem, list } = building;
  const row = visit * stride;
  const count = problem.stepCount[visit]!;
  const earliest = problem.earliest[visit]!;
  const brought = problem.byTransport[visit] === 1;
  const slack = brought
    ? Math.min(mostWait, leaveBy - earliest - problem.care[visit]!)
    : leaveBy - earliest - problem.care[visit]!;
  const moments: Moment[] = [];
  let at = 0;
  for (let step = 0; step < count; step += 1) {
    const previous = moments[step - 1];
    const length = step === 0 ? 0 : problem.stepTicks[row + step - 1]!;
    if (previous !== undefined && (mostWait === 0 || problem.stepAtOnce[row + step] === 1))
      moments.push(plus(previous, length));
    else {
      const moment = { variable: addVariable(list, earliest + at, earliest + at + slack), offset: 0 };
      if (previous !== undefined) before(building, previous, length, moment);
      moments.push(moment);
    }
    at += problem.stepTicks[row + step]!;
  }
  return moments;
}

function momentsOf(building: Building, visit: number, question: Question): VisitMoments {
  const { problem, list, rules } = building;
  const row = visit * stride;
  const mostWait = problem.mayWait[visit] === 1 ? question.mostWait : 0;
  const leaveBy = Math.min(problem.latest[visit]!, question.finishBy);
  const earliest = problem.earliest[visit]!;
  const steps = stepMoments(building, visit, mostWait, leaveBy);
  const first = steps[0]!;
  const last = steps.at(-1)!;
  const brought = problem.byTransport[visit] === 1;
  const arrives = brought ? { variable: addVariable(list, earliest, earliest), offset: 0 } : first;
  let wait = -1;
  if (mostWait > 0) {
    wait = addVariable(list, 0, mostWait);
    const leaves = plus(last, problem.stepTicks[row + steps.length - 1]! - problem.care[visit]!);
    const terms: Term[] = [
      { variable: leaves.variable, sign: 1 },
      { variable: wait, sign: -1 },
      { variable: arrives.variable, sign: -1 },
    ];
    rules.push(sumRule(terms, arrives.offset - leaves.offset));
    // Who may wait little has its steps near each other: the same from the end.
    let after = 0;
    for (let step = steps.length - 1; step >= 0; step -= 1) {
      after += problem.stepTicks[row + step]!;
      before(building, steps[step]!, after - problem.care[visit]! - mostWait, arrives);
    }
  }
  const doseStep = problem.doseBefore[visit]!;
  const inPlace = problem.watch[visit]! >= 0 ? addVariable(list, problem.chairFrom[visit]! < 0 ? 1 : 0, 1) : -1;
  if (doseStep < 0) return { arrives, steps, preparation: null, check: null, inPlace, wait };
  const needed = steps[doseStep]!;
  const { lowest, highest } = list;
  const neededFrom = lowest[needed.variable]! + needed.offset;
  const neededBy = highest[needed.variable]! + needed.offset;
  const ticks = problem.preparationTicks[visit]!;
  const checkTicks = problem.checkTicks[visit]!;
  const keeps = problem.keepsTicks[visit]!;
  const from = Math.max(earliest, neededFrom - keeps - ticks);
  const preparation = { variable: addVariable(list, from, neededBy - checkTicks - ticks), offset: 0 };
  const check = { variable: addVariable(list, from + ticks, neededBy - checkTicks), offset: 0 };
  before(building, arrives, 0, preparation);
  before(building, preparation, ticks, check);
  before(building, check, checkTicks, needed);
  before(building, needed, -keeps - ticks, preparation);
  return { arrives, steps, preparation, check, inPlace, wait };
}

/** Visits that differ in nothing may be put in one order. */
function orderTwins(building: Building, moments: readonly VisitMoments[]): void {
  const { problem } = building;
  const lastOfKind = new Map<string, number>();
  moments.forEach((own, visit) => {
    const row = visit * stride;
    const kind = [
      problem.earliest[visit],
      problem.latest[visit],
      problem.byTransport[visit],
      problem.mayWait[visit],
      problem.doseBefore[visit],
      problem.preparationTicks[visit],
      problem.checkTicks[visit],
      problem.keepsTicks[visit],
      problem.chairFrom[visit],
      problem.chairTo[visit],
      problem.watch[visit],
      problem.stepTicks.subarray(row, row + problem.stepCount[visit]!),
      problem.stepUnits.subarray(row, row + problem.stepCount[visit]!),
      problem.stepAtOnce.subarray(row, row + problem.stepCount[visit]!),
    ].join(' ');
    const twin = lastOfKind.get(kind);
    if (twin !== undefined) before(building, moments[twin]!.steps.at(-1)!, 0, own.steps.at(-1)!);
    lastOfKind.set(kind, visit);
  });
}

const use = (begin: Moment, end: Moment, units: number): Use => ({
  begin: begin.variable,
  beginOffset: begin.offset,
  end: end.variable,
  endOffset: end.offset,
  units,
  present: ALWAYS,
  presentVariable: -1,
});

function usesOf(
  building: Building,
  moments: readonly VisitMoments[],
  firstFact: Int32Array,
): Record<'nurse' | 'chair' | 'watch' | 'preparation' | 'check', Use[]> {
  const { problem } = building;
  const uses: ReturnType<typeof usesOf> = { nurse: [], chair: [], watch: [], preparation: [], check: [] };
  moments.forEach(({ steps, preparation, check, inPlace }, visit) => {
    const row = visit * stride;
    const ticks = (step: number): number => problem.stepTicks[row + step]!;
    for (let step = 0; step < steps.length;) {
      // Steps that follow each other at once with the same need are one.
      const units = problem.stepUnits[row + step]!;
      const begin = steps[step]!;
      let end = plus(begin, ticks(step));
      step += 1;
      while (
        step < steps.length &&
        problem.stepUnits[row + step] === units &&
        steps[step]!.variable === end.variable &&
        steps[step]!.offset === end.offset
      ) {
        end = plus(end, ticks(step));
        step += 1;
      }
      if (units > 0) uses.nurse.push(use(begin, end, units));
    }
    const from = problem.chairFrom[visit]!;
    const to = problem.chairTo[visit]!;
    if (from >= 0) uses.chair.push(use(steps[from]!, plus(steps[to]!, ticks(to)), 1));
    const watch = problem.watch[visit]!;
    if (watch >= 0) {
      const watched = use(steps[watch]!, plus(steps[watch]!, ticks(watch)), 1);
      const inWatchPlace = from < 0 ? ALWAYS : firstFact[inPlace]! * 2;
      uses.watch.push({ ...watched, present: inWatchPlace, presentVariable: from < 0 ? -1 : inPlace });
      if (from >= 0) uses.chair.push({ ...watched, present: inWatchPlace ^ 1, presentVariable: inPlace });
    }
    if (preparation !== null)
      uses.preparation.push(use(preparation, plus(preparation, problem.preparationTicks[visit]!), 1));
    if (check !== null) uses.check.push(use(check, plus(check, problem.checkTicks[visit]!), 1));
  });
  return uses;
}

export type DayModel = { readonly model: Model; readonly moments: readonly VisitMoments[] };

export function dayModel(problem: Problem, question: Question): DayModel {
  const building: Building = { problem, list: { lowest: [], highest: [] }, pairs: [], rules: [] };
  const moments = Array.from({ length: problem.visits }, (_, visit) => momentsOf(building, visit, question));
  orderTwins(building, moments);
  const waits = moments.flatMap(({ wait }) => (wait < 0 ? [] : [{ variable: wait, sign: 1 as const }]));
  if (waits.length > 0) building.rules.push(sumRule(waits, question.mostWait));
  const variables = closeVariables(building.list);
  const orders: Orders = noOrders(variables.count);
  for (const [first, distance, second] of building.pairs)
    addOrder(orders, first.variable, first.offset + distance - second.offset, second.variable);
  const uses = usesOf(building, moments, variables.firstFact);
  const rules = [
    ...building.rules,
    capacityRule(problem.preparers, uses.preparation),
    energyRule(problem.preparers, uses.preparation),
    capacityRule(problem.checkers, uses.check),
    energyRule(problem.checkers, uses.check),
    capacityRule(problem.nurseUnits, uses.nurse),
    capacityRule(problem.chairs, uses.chair),
    capacityRule(problem.watchPlaces, uses.watch),
  ];
  return { model: { variables, orders, rules }, moments };
}

/** The plan the numbers stand for, in the search's rows. */
export function timesFrom(problem: Problem, { moments }: DayModel, values: Int32Array): Int16Array {
  const times = new Int16Array(problem.visits * stride).fill(-1);
  const at = ({ variable, offset }: Moment): number => values[variable]! + offset;
  moments.forEach(({ arrives, steps, preparation, check, inPlace }, visit) => {
    const row = visit * stride;
    steps.forEach((moment, step) => (times[row + step] = at(moment)));
    times[row + ARRIVES] = at(arrives);
    times[row + LEAVES] = at(steps.at(-1)!) + problem.stepTicks[row + steps.length - 1]!;
    if (preparation !== null) times[row + PREPARATION] = at(preparation);
    if (check !== null) times[row + CHECK] = at(check);
    if (inPlace >= 0) times[row + IN_WATCH_PLACE] = values[inPlace]!;
  });
  return times;
}
