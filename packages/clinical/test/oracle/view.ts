/**
 * What may be seen on one day: the ledger's facts dated up to the day of asking, and those that assumed steps add, each
 * from its own day on.
 */
import type { KindName } from '@twelvemonth/clinical';
import { dayNumber } from './dates.ts';
import { type OracleFact, inOrder } from './facts.ts';
import type { World } from './world.ts';

export type View = {
  readonly world: World;
  readonly of: <Kind extends KindName>(kind: Kind) => readonly OracleFact<Kind>[];
  readonly day: (date: string) => number;
};

const none: readonly never[] = [];
const days = new Map<string, number>();
/** Bodies' dates, each read once. */
function dayOf(date: string): number {
  const known = days.get(date);
  if (known !== undefined) return known;
  const found = dayNumber(date);
  days.set(date, found);
  return found;
}

export function viewOf(world: World, facts: readonly OracleFact[]): View {
  const byKind = new Map<KindName, OracleFact[]>();
  for (const fact of facts) {
    const list = byKind.get(fact.kind);
    if (list === undefined) byKind.set(fact.kind, [fact]);
    else list.push(fact);
  }
  return {
    world,
    of: <Kind extends KindName>(kind: Kind) => (byKind.get(kind) ?? none) as unknown as readonly OracleFact<Kind>[],
    day: dayOf,
  };
}

/** The same view with more facts, as seen on a day. */
export const withFacts = (
  world: World,
  facts: readonly OracleFact[],
  more: readonly OracleFact[],
  day: number,
): View => {
  const seen = more.filter((fact) => fact.from <= day);
  return viewOf(world, seen.length === 0 ? facts : [...facts, ...seen].toSorted(inOrder));
};
