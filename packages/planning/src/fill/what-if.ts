/**
 * What would be if: one person in one session, more minutes in a session, one person changed. Each is worked out in the filling
 * as it stands, by the few chains of moves that it calls for, and taken back unless it is to stay.
 */
import { type Arrangement, costOf, give, markOf, mayGive, settleSession, takeBack } from './arrangement.ts';
import { settleNear } from './better-counts.ts';
import type { Filling } from './filling.ts';
import { roomFor } from './places.ts';
import { enter, leave } from './settle.ts';
import { NOWHERE, type Options, nodeOf } from './transport.ts';

function cellIn({ first, end, node }: Options, visit: number, session: number): number {
  for (let cell = first[visit]!; cell < end[visit]!; cell += 1) if (node[cell] === session) return cell;
  return NOWHERE;
}

/** What the whole filling would cost with a visit in a session; undefined if the session is not offered or cannot hold it. */
export function costIfIn({ arrangement }: Filling, visit: number, session: number): number | undefined {
  const { kind, common, transports, options } = arrangement;
  const own = kind[visit]!;
  const transport = transports[own]!;
  const cell = cellIn(options, visit, session);
  if (cell === NOWHERE) return undefined;
  const mark = markOf(arrangement);
  leave(transport, visit);
  let cost = Number.POSITIVE_INFINITY;
  // Somebody of the same kind gives way; or, where others can, visits of the common kind do.
  if (transport.room[session]! > 0) cost = costWithRoom(arrangement, own, session, 0);
  if (own !== common && mayGive(arrangement, own, session))
    cost = Math.min(cost, costWithRoom(arrangement, own, session, 1));
  takeBack(arrangement, mark);
  return cost === Number.POSITIVE_INFINITY ? undefined : cost + options.cost[cell]!;
}

/** Cost of all others when one place of a kind in a session is kept free for somebody, after `more` have been given. */
function costWithRoom(arrangement: Arrangement, kind: number, session: number, more: 0 | 1): number {
  const transport = arrangement.transports[kind]!;
  const mark = markOf(arrangement);
  if (more === 1) give(arrangement, kind, session, 1);
  transport.room[session]! -= 1;
  settleSession(arrangement, session);
  const cost = costOf(arrangement);
  transport.room[session]! += 1;
  if (more === 1) give(arrangement, kind, session, -1);
  takeBack(arrangement, mark);
  return cost;
}

/** What more in one session, so much of each resource, would save. */
export function savedByMore({ arrangement, cost }: Filling, amounts: readonly number[], session: number): number {
  const { places, given, common, transports } = arrangement;
  const mark = markOf(arrangement);
  const before = places.use.map((_, kind) => given[kind]![session]!);
  const add = (sign: 1 | -1): void =>
    amounts.forEach((amount, resource) => (places.has[resource]![session]! += sign * amount));
  add(1);
  const others = transports[common]!;
  others.room[session] = Math.max(0, roomFor(places, given, common, session));
  settleSession(arrangement, session);
  settleNear(arrangement, [session]);
  const saved = cost - costOf(arrangement);
  add(-1);
  places.use.forEach((_, kind) => {
    if (kind === common) return;
    given[kind]![session] = before[kind]!;
    transports[kind]!.room[session] = before[kind]!;
  });
  others.room[session] = Math.max(0, roomFor(places, given, common, session));
  takeBack(arrangement, mark);
  return saved;
}

function replaceOptions(options: Options, visit: number, node: readonly number[], cost: readonly number[]): void {
  const { first, end } = options;
  let at = first[visit]!;
  if (node.length > end[visit]! - at) {
    at = end.reduce((most, one) => Math.max(most, one), 0);
    if (at + node.length > options.node.length) {
      const nodes = new Int16Array(options.node.length * 2);
      const costs = new Float64Array(options.node.length * 2);
      nodes.set(options.node);
      costs.set(options.cost);
      options.node = nodes;
      options.cost = costs;
    }
  }
  node.forEach((one, index) => {
    options.node[at + index] = one;
    options.cost[at + index] = cost[index]!;
  });
  first[visit] = at;
  end[visit] = at + node.length;
}

/**
 * The filling after one person's windows or wishes have changed; the new options end with the one of having no place. The
 * filling is changed in place; its bound is no longer one and becomes minus infinity.
 */
export function changeOne(filling: Filling, visit: number, node: readonly number[], cost: readonly number[]): Filling {
  const { arrangement } = filling;
  const { kind, common, transports, options } = arrangement;
  const own = kind[visit]!;
  const transport = transports[own]!;
  const before = nodeOf(transport, visit);
  leave(transport, visit);
  replaceOptions(options, visit, node, cost);
  enter(transport, visit);
  for (const { journal } of transports) journal.length = 0;
  settleNear(arrangement, own === common ? [before] : [before, ...node.slice(0, -1)]);
  return { arrangement, cost: costOf(arrangement), atLeast: Number.NEGATIVE_INFINITY };
}
