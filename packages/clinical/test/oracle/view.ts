/**
 * What may be seen on one day: the ledger's facts dated up to the day of asking, and those that assumed steps add, each
 * from its own day on.
 */
import type { KindName } from '@twelvemonth/clinical';
import { dayNumber } from './dates.ts';
import { type OracleFact, inOrder } from './facts.ts';
import { type Regimen, type World, underRegimen } from './world.ts';

export type View = {
  /** As it is for the regimen that is ordered (R0). */
  readonly world: World;
  readonly regimen: Regimen;
  /** T: dates inside bodies may have to be past on it. */
  readonly today: number;
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

type Lists = ReadonlyMap<KindName, readonly OracleFact[]>;
export type Ledger = View & { readonly lists: Lists };

export function viewOf(sheet: World, facts: readonly OracleFact[], today: number): Ledger {
  const lists = new Map<KindName, OracleFact[]>();
  for (const fact of facts.toSorted(inOrder)) {
    const list = lists.get(fact.kind);
    if (list === undefined) lists.set(fact.kind, [fact]);
    else list.push(fact);
  }
  const order = (lists.get('prescription') ?? none).at(-1) as OracleFact<'prescription'> | undefined;
  const { world, regimen } = underRegimen(sheet, order?.body.regimen);
  return {
    world,
    regimen,
    today,
    lists,
    of: <Kind extends KindName>(kind: Kind) => (lists.get(kind) ?? none) as unknown as readonly OracleFact<Kind>[],
    day: dayOf,
  };
}

/** The same view with more facts, as seen on a day. */
export function withFacts(view: Ledger, more: readonly OracleFact[], day: number): View {
  const added = new Map<KindName, readonly OracleFact[]>();
  for (const fact of more) {
    if (fact.from <= day) added.set(fact.kind, placed(added.get(fact.kind) ?? view.lists.get(fact.kind) ?? none, fact));
  }
  if (added.size === 0) return view;
  return {
    world: view.world,
    regimen: view.regimen,
    today: view.today,
    of: <Kind extends KindName>(kind: Kind) =>
      (added.get(kind) ?? view.lists.get(kind) ?? none) as unknown as readonly OracleFact<Kind>[],
    day: dayOf,
  };
}

/** A fact put in its place in an ordered list. */
function placed(list: readonly OracleFact[], fact: OracleFact): readonly OracleFact[] {
  let at = list.length;
  while (at > 0 && inOrder(list[at - 1] ?? fact, fact) > 0) at -= 1;
  return at === list.length ? [...list, fact] : list.toSpliced(at, 0, fact);
}
