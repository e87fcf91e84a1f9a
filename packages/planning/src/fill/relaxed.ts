/**
 * The filling with halves allowed: a visit that takes several units of one resource may be spread over several sessions. Its
 * cost can only be lower than that of any whole filling, so it is a bound; and it is where the whole filling begins.
 */
import type { InShares } from '../in-steps.ts';
import { settle } from './settle.ts';
import { NOWHERE, type Options, type Transport, cheapestCell, putIn, transportOver } from './transport.ts';

export type Relaxed = {
  readonly transport: Transport;
  /** By unit: whose it is. */
  readonly owner: Int32Array;
  /** By visit: its first unit; the next visit's first unit is where it ends. */
  readonly firstUnit: Int32Array;
  /** Costs are multiplied by this, so that each unit's share is a whole number. */
  readonly scale: number;
  readonly bound: number;
};

const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));
const multiple = (a: number, b: number): number => (a / divisor(a, b)) * b;

/** For one resource: what each visit takes of it (0: nothing, then the visit stands where it is cheapest) and what there is. */
export function* relaxedInSteps(
  options: Options,
  use: ArrayLike<number>,
  has: ArrayLike<number>,
  sessions: number,
): InShares<Relaxed> {
  const visits = use.length;
  const size = Array.from(use).reduce((all, one) => divisor(all, one), 0) || 1;
  const unitsOf = (visit: number): number => use[visit]! / size;
  const scale = Array.from(new Set(Array.from(use, (one) => one / size)))
    .filter((units) => units > 0)
    .reduce(multiple, 1);
  const firstUnit = new Int32Array(visits + 1);
  const first: number[] = [0];
  let cells = 0;
  for (let visit = 0; visit < visits; visit += 1) {
    firstUnit[visit + 1] = firstUnit[visit]! + unitsOf(visit);
    for (let unit = 0; unit < unitsOf(visit); unit += 1) {
      cells += options.end[visit]! - options.first[visit]!;
      first.push(cells);
    }
  }
  const units = firstUnit[visits]!;
  const node = new Int16Array(cells);
  const cost = new Float64Array(cells);
  const owner = new Int32Array(units);
  let free = 0;
  let at = 0;
  for (let visit = 0; visit < visits; visit += 1) {
    const from = options.first[visit]!;
    const to = options.end[visit]!;
    if (unitsOf(visit) === 0)
      free += options.cost.subarray(from, to).reduce((a, b) => Math.min(a, b), Number.MAX_VALUE);
    const share = scale / unitsOf(visit);
    for (let unit = firstUnit[visit]!; unit < firstUnit[visit + 1]!; unit += 1) {
      owner[unit] = visit;
      for (let cell = from; cell < to; cell += 1, at += 1) {
        node[at] = options.node[cell]!;
        cost[at] = options.cost[cell]! * share;
      }
    }
  }
  const unitOptions = { first: Int32Array.from(first), end: Int32Array.from(first).subarray(1), node, cost };
  const room = Int32Array.from(has, (value) => Math.max(0, Math.floor(value / size)));
  const transport = transportOver(sessions + 1, units, unitOptions, room);
  for (let unit = 0; unit < units; unit += 1) putIn(transport, unit, cheapestCell(transport, unit));
  for (let session = 0; session < sessions; session += 1) {
    settle(transport, session);
    yield (session + 1) / sessions;
  }
  return { transport, owner, firstUnit, scale, bound: transport.cost / scale + free };
}

/** The option a visit's unit stands in, as a cell of the visit's own options. */
export function cellOfUnit({ transport, firstUnit }: Relaxed, options: Options, visit: number, unit: number): number {
  const at = transport.at[firstUnit[visit]! + unit]!;
  return at === NOWHERE ? NOWHERE : at - transport.options.first[firstUnit[visit]! + unit]! + options.first[visit]!;
}
