/**
 * Decides whether whole numbers can be found that keep every rule: assume, draw what follows, learn from contradictions, go
 * back, start over from time to time. Ends with numbers, with certainty that there are none, or without an answer when its
 * limit is reached.
 */
import { type Clauses, addClause, lookAtClauses, noClauses } from './clauses.ts';
import { type FactHeap, bump, factHeap, fade, putBack, takeTop } from './fact-heap.ts';
import { type Learning, learn, learningFor } from './learn.ts';
import { type Orders, lookAtOrders } from './order-rule.ts';
import type { Rule } from './rule.ts';
import { type Trail, type Variables, ASSUMED, assume, becauseOfClause, conclude, goBackTo, trailOf } from './trail.ts';

export type Model = { readonly variables: Variables; readonly orders: Orders; readonly rules: readonly Rule[] };

export type Decision =
  | { readonly answer: 'possible'; readonly values: Int32Array; readonly contradictions: number }
  | { readonly answer: 'impossible'; readonly contradictions: number }
  | { readonly answer: 'not known'; readonly contradictions: number };

export type Limit = {
  readonly contradictions: number;
  /** Asked from time to time; true ends the search. */
  readonly stop?: () => boolean;
  /** A hint: the numbers to try first. */
  readonly like?: ArrayLike<number>;
};

type Machine = {
  readonly model: Model;
  readonly trail: Trail;
  readonly clauses: Clauses;
  readonly heap: FactHeap;
  readonly learning: Learning;
  /** By variable: the rules that watch it. */
  readonly watchers: number[][];
  readonly waiting: Uint8Array;
  readonly queue: number[];
};

const restartAfter = 100;
const askEvery = 16;

function machineFor(model: Model): Machine {
  const { facts, count } = model.variables;
  const watchers: number[][] = Array.from({ length: count }, () => []);
  model.rules.forEach((rule, index) => rule.watches.forEach((variable) => watchers[variable]!.push(index)));
  return {
    model,
    trail: trailOf(model.variables),
    clauses: noClauses(facts),
    heap: factHeap(facts),
    learning: learningFor(facts),
    watchers,
    waiting: new Uint8Array(model.rules.length).fill(1),
    queue: model.rules.map((_, index) => index),
  };
}

/** Draws everything that follows; false on a contradiction. */
function drawConclusions({ model, trail, clauses, watchers, waiting, queue }: Machine): boolean {
  for (;;) {
    while (trail.next < trail.length) {
      const literal = trail.literals[trail.next]!;
      trail.next += 1;
      const variable = trail.variableOf[literal >> 1]!;
      if (variable < 0) continue;
      for (const rule of watchers[variable]!) {
        if (waiting[rule] === 1) continue;
        waiting[rule] = 1;
        queue.push(rule);
      }
      if (!lookAtOrders(model.orders, trail, literal)) return false;
      if (!lookAtClauses(clauses, trail, literal)) return false;
    }
    const rule = queue.shift();
    if (rule === undefined) return true;
    waiting[rule] = 0;
    if (!model.rules[rule]!.look(trail)) return false;
  }
}

/**
 * Forgets what was still to be looked at when the contradiction was met. An assumption is made only when every rule has been
 * looked at, so the bounds gone back to have nothing more to say until something new is concluded.
 */
function forgetQueue({ queue, waiting }: Machine): void {
  for (const rule of queue) waiting[rule] = 0;
  queue.length = 0;
}

/** 1, 1, 2, 1, 1, 2, 4, ... (Luby, Sinclair, Zuckerman 1993; from memory). */
function luby(index: number): number {
  let size = 1;
  let at = index;
  while (size < at + 1) size = 2 * size + 1;
  while (size - 1 !== at) {
    size = (size - 1) >> 1;
    at %= size;
  }
  return (size + 1) >> 1;
}

/** The opening orders among fixed bounds, which no change would ever call for. */
function initialOrders({ model, trail }: Machine): boolean {
  for (let variable = 0; variable < model.variables.count; variable += 1) {
    const list = model.orders.after[variable]!;
    for (let index = 0; index < list.length; index += 2) {
      const other = list[index]!;
      const distance = list[index + 1]!;
      if (trail.least[variable]! + distance > trail.most[other]!) return false;
      raise(trail, other, trail.least[variable]! + distance);
      lower(trail, variable, trail.most[other]! - distance);
    }
  }
  return true;
}

function raise(trail: Trail, variable: number, bound: number): void {
  if (trail.least[variable]! >= bound) return;
  conclude(trail, (trail.variables.firstFact[variable]! + bound - trail.variables.lowest[variable]! - 1) * 2, ASSUMED);
}

function lower(trail: Trail, variable: number, bound: number): void {
  if (trail.most[variable]! <= bound) return;
  conclude(trail, (trail.variables.firstFact[variable]! + bound - trail.variables.lowest[variable]!) * 2 + 1, ASSUMED);
}

function nextFact({ heap, trail }: Machine): number {
  for (let fact = takeTop(heap); fact >= 0; fact = takeTop(heap)) if (trail.value[fact * 2] === 0) return fact;
  return -1;
}

function setPhases({ trail, model }: Machine, like: ArrayLike<number>): void {
  for (let variable = 0; variable < model.variables.count; variable += 1) {
    const first = model.variables.firstFact[variable]!;
    const span = model.variables.highest[variable]! - model.variables.lowest[variable]!;
    for (let index = 0; index < span; index += 1)
      trail.phase[first + index] = like[variable]! >= model.variables.lowest[variable]! + 1 + index ? 1 : 0;
  }
}

export function decide(model: Model, limit: Limit): Decision {
  for (let variable = 0; variable < model.variables.count; variable += 1)
    if (model.variables.lowest[variable]! > model.variables.highest[variable]!)
      return { answer: 'impossible', contradictions: 0 };
  const machine = machineFor(model);
  const { trail, clauses, heap, learning } = machine;
  let contradictions = 0;
  if (!initialOrders(machine)) return { answer: 'impossible', contradictions };
  if (limit.like !== undefined) setPhases(machine, limit.like);
  const met = (fact: number): void => bump(heap, fact);
  const reopened = (fact: number): void => putBack(heap, fact);
  let restarts = 0;
  let untilRestart = restartAfter * luby(0);
  for (;;) {
    if (drawConclusions(machine)) {
      if (untilRestart <= 0) {
        restarts += 1;
        untilRestart = restartAfter * luby(restarts);
        goBackTo(trail, 0, reopened);
        continue;
      }
      const fact = nextFact(machine);
      if (fact < 0) return { answer: 'possible', values: trail.least.slice(), contradictions };
      assume(trail, trail.phase[fact] === 1 ? fact * 2 : fact * 2 + 1);
      continue;
    }
    contradictions += 1;
    untilRestart -= 1;
    const level = learn(trail, clauses, learning, met);
    if (level < 0) return { answer: 'impossible', contradictions };
    const ends = contradictions >= limit.contradictions || (contradictions % askEvery === 0 && limit.stop?.() === true);
    if (ends) return { answer: 'not known', contradictions };
    goBackTo(trail, level, reopened);
    forgetQueue(machine);
    const { learnt } = learning;
    const first = learnt[0]!;
    conclude(trail, first, learnt.length === 1 ? ASSUMED : becauseOfClause(addClause(clauses, learnt)));
    fade(heap);
  }
}
