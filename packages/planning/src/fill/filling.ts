/** A filling computed: the visits in their sessions, what that costs, and what no filling can go below. */
import { type Arrangement, cellOf, costOf, emptyArrangement } from './arrangement.ts';
import { type InShares, allOf, partOf } from '../in-steps.ts';
import { betterCounts } from './better-counts.ts';
import type { Places } from './places.ts';
import { type Relaxed, relaxedInSteps } from './relaxed.ts';
import type { Options } from './transport.ts';
import { wholeFrom } from './whole.ts';

export type FillProblem = {
  readonly places: Places;
  /** By visit. */
  readonly kind: Uint8Array;
  /** Every visit's last option is not to have a place: the node after the last session. */
  readonly options: Options;
};

export type Filling = {
  readonly arrangement: Arrangement;
  readonly cost: number;
  /** No filling costs less. */
  readonly atLeast: number;
};

/** Kinds that have visits, the most common first: it moves most easily, so it is the one that follows. */
function kindsByCount(kind: Uint8Array, kinds: number): number[] {
  const count = new Int32Array(kinds);
  for (const own of kind) count[own]! += 1;
  return [...count.keys()].filter((own) => count[own]! > 0).toSorted((a, b) => count[b]! - count[a]! || a - b);
}

/** Up to this many visits every kind is tried as the one that follows, beginning at every resource's own relaxation. */
const few = 200;

export const fillingOf = (problem: FillProblem, tries: number): Filling => allOf(fillingInSteps(problem, tries));

/** How far it is counts relaxations and beginnings; what a beginning may still try counts as a part of it. */
export function* fillingInSteps({ places, kind, options }: FillProblem, tries: number): InShares<Filling> {
  const isSmall = kind.length <= few;
  const kinds = kindsByCount(kind, places.use.length);
  const resources = places.has.length;
  const parts = resources + (isSmall ? resources * kinds.length : 1);
  let done = 0;
  // Each resource alone gives a bound; the one that gives the highest is the scarce one, and where the filling begins.
  const relaxations: Relaxed[] = [];
  for (const [resource, has] of places.has.entries()) {
    const use = Int32Array.from(kind, (own) => places.use[own]![resource]!);
    const relaxed = relaxedInSteps(options, use, has, places.sessions);
    relaxations.push(yield* partOf(relaxed, done / parts, (done + 1) / parts));
    done += 1;
  }
  relaxations.sort((a, b) => b.bound - a.bound);
  const beginnings = (isSmall ? relaxations : relaxations.slice(0, 1)).flatMap((relaxed) =>
    (isSmall ? kinds : kinds.slice(0, 1)).map((common) => ({ relaxed, common })),
  );
  let best: Arrangement | undefined;
  for (const { relaxed, common } of beginnings) {
    const arrangement = wholeFrom(relaxed, places, options, kind, common);
    const effort = { tries };
    for (const _ of betterCounts(arrangement, effort)) yield (done + 1 - effort.tries / Math.max(1, tries)) / parts;
    done += 1;
    yield done / parts;
    if (best === undefined || costOf(arrangement) < costOf(best)) best = arrangement;
  }
  best ??= emptyArrangement(places, options, kind, 0);
  for (const { journal } of best.transports) journal.length = 0;
  return { arrangement: best, cost: costOf(best), atLeast: relaxations[0]?.bound ?? 0 };
}

/** By visit: the session it stands in, the number of sessions for who has no place. */
export const sessionsOf = ({ arrangement }: Filling): Int32Array =>
  Int32Array.from(arrangement.kind, (_, visit) => arrangement.options.node[cellOf(arrangement, visit)]!);
