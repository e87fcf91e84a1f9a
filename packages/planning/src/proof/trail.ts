/**
 * Whole-number variables for a proof, each known by its bounds. Every statement "x is at least v" is one yes-or-no fact; a
 * literal is a fact (even) or its opposite (odd). What has been concluded lies on the trail in order, each with its reason,
 * so that a contradiction can be traced back to the assumptions that made it.
 */

export type Literal = number;
/** A literal that always holds; its opposite is `NEVER`. */
export const ALWAYS: Literal = 0;
export const NEVER: Literal = 1;

export const opposite = (literal: Literal): Literal => literal ^ 1;

/** Reasons: an assumption, one other literal (stored as -2 - literal), or a list in one of the two stores. */
export const ASSUMED = -1;
export const becauseOf = (literal: Literal): number => -2 - literal;
export const becauseOfNote = (at: number): number => at * 2;
export const becauseOfClause = (at: number): number => at * 2 + 1;

export type Variables = {
  readonly count: number;
  readonly lowest: Int32Array;
  readonly highest: Int32Array;
  /** The fact "x is at least lowest + 1"; the others follow in order. */
  readonly firstFact: Int32Array;
  readonly facts: number;
};

/** Collects variables; the literals of a variable exist once it is closed. */
export type VariableList = { readonly lowest: number[]; readonly highest: number[] };

export function addVariable(list: VariableList, lowest: number, highest: number): number {
  list.lowest.push(lowest);
  list.highest.push(highest);
  return list.lowest.length - 1;
}

export function closeVariables(list: VariableList): Variables {
  const firstFact = new Int32Array(list.lowest.length);
  let facts = 1;
  list.lowest.forEach((lowest, variable) => {
    firstFact[variable] = facts;
    facts += Math.max(0, list.highest[variable]! - lowest);
  });
  return {
    count: list.lowest.length,
    lowest: Int32Array.from(list.lowest),
    highest: Int32Array.from(list.highest),
    firstFact,
    facts,
  };
}

export type Trail = {
  readonly variables: Variables;
  readonly variableOf: Int32Array;
  readonly boundOf: Int32Array;
  readonly least: Int32Array;
  readonly most: Int32Array;
  /** By literal: 1 holds, -1 does not, 0 open. */
  readonly value: Int8Array;
  readonly level: Int32Array;
  readonly reason: Int32Array;
  readonly literals: Int32Array;
  /** The bound the variable had before. */
  readonly before: Int32Array;
  length: number;
  /** Next literal whose consequences have not been drawn. */
  next: number;
  readonly levelAt: number[];
  /** Reasons given by rules, newest last: a count, then that many literals. Forgotten on going back. */
  notes: Int32Array;
  notesEnd: number;
  readonly notesAt: number[];
  /** Literals that hold and cannot hold together; filled when something fails. */
  readonly conflict: number[];
  /** What is assumed of a fact first when nothing else decides: 1 that it holds. */
  readonly phase: Int8Array;
};

export function trailOf(variables: Variables): Trail {
  const { facts } = variables;
  const variableOf = new Int32Array(facts).fill(-1);
  const boundOf = new Int32Array(facts);
  for (let variable = 0; variable < variables.count; variable += 1) {
    const span = variables.highest[variable]! - variables.lowest[variable]!;
    for (let index = 0; index < span; index += 1) {
      variableOf[variables.firstFact[variable]! + index] = variable;
      boundOf[variables.firstFact[variable]! + index] = variables.lowest[variable]! + 1 + index;
    }
  }
  const trail: Trail = {
    variables,
    variableOf,
    boundOf,
    least: variables.lowest.slice(),
    most: variables.highest.slice(),
    value: new Int8Array(facts * 2),
    level: new Int32Array(facts),
    reason: new Int32Array(facts).fill(ASSUMED),
    literals: new Int32Array(facts),
    before: new Int32Array(facts),
    length: 0,
    next: 0,
    levelAt: [],
    notes: new Int32Array(1 << 14),
    notesEnd: 0,
    notesAt: [],
    conflict: [],
    phase: new Int8Array(facts),
  };
  conclude(trail, ALWAYS, ASSUMED);
  return trail;
}

export function atLeast(trail: Trail, variable: number, bound: number): Literal {
  const { variables } = trail;
  const lowest = variables.lowest[variable]!;
  if (bound <= lowest) return ALWAYS;
  if (bound > variables.highest[variable]!) return NEVER;
  return (variables.firstFact[variable]! + bound - lowest - 1) * 2;
}

export const atMost = (trail: Trail, variable: number, bound: number): Literal =>
  opposite(atLeast(trail, variable, bound + 1));

/**
 * Puts an open literal on the trail, and with it all weaker ones of its variable: "at least 5" makes "at least 4" hold. They
 * must be there at once, because a rule may name any of them as a reason.
 */
export function conclude(trail: Trail, literal: Literal, reason: number): void {
  const variable = trail.variableOf[literal >> 1]!;
  if (variable < 0) {
    put(trail, literal, reason);
    return;
  }
  const rises = (literal & 1) === 0;
  const bounds = rises ? trail.least : trail.most;
  const bound = trail.boundOf[literal >> 1]! - (rises ? 0 : 1);
  trail.before[trail.length] = bounds[variable]!;
  bounds[variable] = bound;
  put(trail, literal, reason);
  const step = rises ? -2 : 2;
  const last = trail.before.length * 2;
  for (let weaker = literal + step; weaker > 1 && weaker < last; weaker += step) {
    if (trail.variableOf[weaker >> 1] !== variable || trail.value[weaker] !== 0) break;
    trail.before[trail.length] = bound;
    put(trail, weaker, becauseOf(weaker - step));
  }
}

function put(trail: Trail, literal: Literal, reason: number): void {
  const fact = literal >> 1;
  trail.value[literal] = 1;
  trail.value[literal ^ 1] = -1;
  trail.level[fact] = trail.levelAt.length;
  trail.reason[fact] = reason;
  trail.literals[trail.length] = literal;
  trail.length += 1;
}

export function assume(trail: Trail, literal: Literal): void {
  trail.levelAt.push(trail.length);
  trail.notesAt.push(trail.notesEnd);
  conclude(trail, literal, ASSUMED);
}

/** Forgets everything concluded after a level. */
export function goBackTo(trail: Trail, level: number, reopened: (fact: number) => void): void {
  if (trail.levelAt.length <= level) return;
  const keep = trail.levelAt[level]!;
  for (let index = trail.length - 1; index >= keep; index -= 1) {
    const literal = trail.literals[index]!;
    const fact = literal >> 1;
    trail.value[literal] = 0;
    trail.value[literal ^ 1] = 0;
    trail.phase[fact] = literal & 1 ? 0 : 1;
    const variable = trail.variableOf[fact]!;
    if (variable >= 0) ((literal & 1) === 0 ? trail.least : trail.most)[variable] = trail.before[index]!;
    reopened(fact);
  }
  trail.length = keep;
  trail.next = keep;
  trail.notesEnd = trail.notesAt[level]!;
  trail.levelAt.length = level;
  trail.notesAt.length = level;
}

/** Keeps a list of literals that hold as a reason. */
export function note(trail: Trail, literals: readonly Literal[], count: number): number {
  if (trail.notesEnd + count + 1 > trail.notes.length) {
    const larger = new Int32Array(trail.notes.length * 2 + count);
    larger.set(trail.notes);
    trail.notes = larger;
  }
  const at = trail.notesEnd;
  trail.notes[at] = count;
  for (let index = 0; index < count; index += 1) trail.notes[at + 1 + index] = literals[index]!;
  trail.notesEnd = at + count + 1;
  return at;
}
