/** What has been learnt: lists of literals of which at least one must hold. Two literals of each list are watched. */
import { type Literal, type Trail, becauseOfClause, conclude } from './trail.ts';

export type Clauses = {
  /** A count, then that many literals, one list after the other. */
  cells: Int32Array;
  end: number;
  /** By literal: places of the lists to look at when it becomes true (its opposite is watched there). */
  readonly watching: number[][];
};

export const noClauses = (facts: number): Clauses => ({
  cells: new Int32Array(1 << 16),
  end: 0,
  watching: Array.from({ length: facts * 2 }, () => []),
});

/** Stores a list of two or more; the first two are watched. */
export function addClause(clauses: Clauses, literals: readonly Literal[]): number {
  if (clauses.end + literals.length + 1 > clauses.cells.length) {
    const larger = new Int32Array(clauses.cells.length * 2 + literals.length);
    larger.set(clauses.cells);
    clauses.cells = larger;
  }
  const at = clauses.end;
  clauses.cells[at] = literals.length;
  literals.forEach((literal, index) => (clauses.cells[at + 1 + index] = literal));
  clauses.end = at + literals.length + 1;
  clauses.watching[literals[0]! ^ 1]!.push(at);
  clauses.watching[literals[1]! ^ 1]!.push(at);
  return at;
}

/** Draws what the lists say about a literal that has become true; false on a contradiction. */
export function lookAtClauses(clauses: Clauses, trail: Trail, literal: Literal): boolean {
  const { cells } = clauses;
  const { value } = trail;
  const list = clauses.watching[literal]!;
  const lost = literal ^ 1;
  let kept = 0;
  for (let index = 0; index < list.length; index += 1) {
    const at = list[index]!;
    if (cells[at + 1] === lost) {
      cells[at + 1] = cells[at + 2]!;
      cells[at + 2] = lost;
    }
    const other = cells[at + 1]!;
    if (value[other] === 1) {
      list[kept++] = at;
      continue;
    }
    const end = at + 1 + cells[at]!;
    let next = at + 3;
    while (next < end && value[cells[next]!] === -1) next += 1;
    if (next < end) {
      cells[at + 2] = cells[next]!;
      cells[next] = lost;
      clauses.watching[cells[at + 2]! ^ 1]!.push(at);
      continue;
    }
    list[kept++] = at;
    if (value[other] === -1) {
      trail.conflict.length = 0;
      for (let cell = at + 1; cell < end; cell += 1) trail.conflict.push(cells[cell]! ^ 1);
      for (index += 1; index < list.length; index += 1) list[kept++] = list[index]!;
      list.length = kept;
      return false;
    }
    conclude(trail, other, becauseOfClause(at));
  }
  list.length = kept;
  return true;
}
