/** x + distance <= y, for any number of pairs: one begins so long after another. */
import { type Trail, atLeast, atMost, becauseOf, conclude, opposite } from './trail.ts';

export type Orders = {
  /** By variable: those that come after it, and those before it, each followed by the distance. */
  readonly after: number[][];
  readonly before: number[][];
};

export const noOrders = (variables: number): Orders => ({
  after: Array.from({ length: variables }, () => []),
  before: Array.from({ length: variables }, () => []),
});

export function addOrder(orders: Orders, first: number, distance: number, second: number): void {
  orders.after[first]!.push(second, distance);
  orders.before[second]!.push(first, distance);
}

/** Draws what follows from one new bound; false on a contradiction. */
export function lookAtOrders(orders: Orders, trail: Trail, literal: number): boolean {
  const fact = literal >> 1;
  const variable = trail.variableOf[fact]!;
  const rises = (literal & 1) === 0;
  const bound = trail.boundOf[fact]! - (rises ? 0 : 1);
  if (bound !== (rises ? trail.least : trail.most)[variable]) return true;
  const list = (rises ? orders.after : orders.before)[variable]!;
  for (let index = 0; index < list.length; index += 2) {
    const other = list[index]!;
    const follows = rises
      ? atLeast(trail, other, bound + list[index + 1]!)
      : atMost(trail, other, bound - list[index + 1]!);
    const value = trail.value[follows]!;
    if (value > 0) continue;
    if (value < 0) {
      trail.conflict.length = 0;
      trail.conflict.push(literal);
      if (follows > 1) trail.conflict.push(opposite(follows));
      return false;
    }
    conclude(trail, follows, becauseOf(literal));
  }
  return true;
}
