/**
 * From a contradiction to what was wrong: going back along the reasons until one literal of the last assumption remains that
 * alone, with older ones, leads to it (first unique implication point). The result is a list of literals of which one must
 * hold; the first is the one to conclude after going back.
 */
import type { Clauses } from './clauses.ts';
import { type Literal, type Trail, ASSUMED } from './trail.ts';

export type Learning = { readonly seen: Uint8Array; readonly learnt: Literal[]; readonly touched: number[] };

export const learningFor = (facts: number): Learning => ({ seen: new Uint8Array(facts), learnt: [], touched: [] });

/** Calls back with each literal that made this one follow. */
function becauseOfEach(trail: Trail, clauses: Clauses, literal: Literal, tell: (held: Literal) => void): void {
  const reason = trail.reason[literal >> 1]!;
  if (reason === ASSUMED) return;
  if (reason < 0) {
    tell(-2 - reason);
    return;
  }
  const at = reason >> 1;
  const isClause = (reason & 1) === 1;
  const cells = isClause ? clauses.cells : trail.notes;
  const end = at + 1 + cells[at]!;
  for (let cell = at + 1; cell < end; cell += 1) {
    const held = isClause ? cells[cell]! ^ 1 : cells[cell]!;
    if (held >> 1 !== literal >> 1) tell(held);
  }
}

/** Fills `learnt`; returns the level to go back to, -1 if the contradiction needs no assumption at all. */
export function learn(trail: Trail, clauses: Clauses, learning: Learning, met: (fact: number) => void): number {
  const { seen, learnt, touched } = learning;
  const level = Math.max(0, ...trail.conflict.map((literal) => trail.level[literal >> 1]!));
  if (level === 0) return -1;
  learnt.length = 0;
  learnt.push(0);
  touched.length = 0;
  let open = 0;
  const tell = (held: Literal): void => {
    const fact = held >> 1;
    if (seen[fact] === 1 || trail.level[fact] === 0) return;
    seen[fact] = 1;
    touched.push(fact);
    met(fact);
    if (trail.level[fact] === level) open += 1;
    else learnt.push(held ^ 1);
  };
  for (const literal of trail.conflict) tell(literal);
  let index = trail.length - 1;
  for (;;) {
    while (seen[trail.literals[index]! >> 1] === 0) index -= 1;
    const literal = trail.literals[index]!;
    index -= 1;
    open -= 1;
    if (open === 0) {
      learnt[0] = literal ^ 1;
      break;
    }
    becauseOfEach(trail, clauses, literal, tell);
  }
  dropImplied(trail, clauses, learning);
  for (const fact of touched) seen[fact] = 0;
  return secondHighest(trail, learnt);
}

/** A literal whose reasons are all in the list already adds nothing. */
function dropImplied(trail: Trail, clauses: Clauses, { seen, learnt }: Learning): void {
  let kept = 1;
  for (let index = 1; index < learnt.length; index += 1) {
    const held = learnt[index]! ^ 1;
    let implied = trail.reason[held >> 1] !== ASSUMED;
    becauseOfEach(trail, clauses, held, (other) => {
      if (seen[other >> 1] === 0 && trail.level[other >> 1]! > 0) implied = false;
    });
    if (!implied) learnt[kept++] = learnt[index]!;
  }
  learnt.length = kept;
}

/** Brings a literal of the second highest level to the second place. */
function secondHighest(trail: Trail, learnt: Literal[]): number {
  let level = 0;
  for (let index = 1; index < learnt.length; index += 1) {
    const own = trail.level[learnt[index]! >> 1]!;
    if (own <= level) continue;
    level = own;
    const literal = learnt[index]!;
    learnt[index] = learnt[1]!;
    learnt[1] = literal;
  }
  return level;
}
