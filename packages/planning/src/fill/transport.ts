/**
 * Items that each stand in one node at least total cost, with room for so many in each node: a transportation problem, kept at
 * its optimum while items come and go and rooms change. Every node has a price; at the optimum each item stands where its cost
 * and the price together are least, and only a full node has a price (linear duality). One change costs one or two shortest
 * paths over the nodes, whatever the number of items (successive shortest paths with potentials: Ahuja, Magnanti, Orlin 1993;
 * from memory). The last node is outside: it holds everyone and costs nothing to enter but the item's own cost there.
 */

import { type Nearest, nearestOf } from './nearest.ts';

export const NOWHERE = -1;

/** Where each item may stand and at what cost: options of item i are the cells from first[i] up to end[i]. */
export type Options = {
  readonly first: Int32Array;
  readonly end: Int32Array;
  /** Replaced by longer ones when somebody gets more options than fit. */
  node: Int16Array;
  cost: Float64Array;
};

export type Transport = {
  readonly nodes: number;
  readonly options: Options;
  /** By item: the cell of the option it stands in, NOWHERE if it does not take part. */
  readonly at: Int32Array;
  readonly room: Int32Array;
  readonly load: Int32Array;
  readonly price: Float64Array;
  /** Items of a node as a linked list. */
  readonly head: Int32Array;
  readonly next: Int32Array;
  readonly previous: Int32Array;
  /** By pair of nodes: what the cheapest move of one item from the first to the second costs, and the cell it moves to. */
  readonly moveCost: Float64Array;
  readonly moveCell: Int32Array;
  readonly moveItem: Int32Array;
  readonly isStale: Uint8Array;
  /** Columns of a row that hold a move: from, up to and not including. The node outside is always looked at. */
  readonly reachFrom: Int16Array;
  readonly reachTo: Int16Array;
  /** No item stands farther than this from another node it may move to, by their numbers; the node outside apart. */
  span: number;
  /** Scratch of the shortest paths. */
  readonly distance: Float64Array;
  readonly via: Int16Array;
  readonly isSettled: Uint8Array;
  readonly queue: Nearest;
  /** Total cost of the items where they stand. */
  cost: number;
  /** What the last chain looked for leaves of the price at its end. */
  left: number;
  /** Moves made, newest last: item and the cell it stood in before. Read by whoever may want to take them back. */
  readonly journal: number[];
};

const outsideRoom = 2 ** 30;

export function transportOver(nodes: number, items: number, options: Options, room: ArrayLike<number>): Transport {
  const rooms = new Int32Array(nodes).fill(outsideRoom);
  for (let node = 0; node < nodes - 1; node += 1) rooms[node] = room[node]!;
  return {
    nodes,
    options,
    at: new Int32Array(items).fill(NOWHERE),
    room: rooms,
    load: new Int32Array(nodes),
    price: new Float64Array(nodes),
    head: new Int32Array(nodes).fill(-1),
    next: new Int32Array(items).fill(-1),
    previous: new Int32Array(items).fill(-1),
    moveCost: new Float64Array(nodes * nodes),
    moveCell: new Int32Array(nodes * nodes),
    moveItem: new Int32Array(nodes * nodes),
    isStale: new Uint8Array(nodes).fill(1),
    reachFrom: new Int16Array(nodes),
    reachTo: new Int16Array(nodes),
    span: 0,
    distance: new Float64Array(nodes),
    via: new Int16Array(nodes),
    isSettled: new Uint8Array(nodes),
    queue: nearestOf(nodes * nodes),
    cost: 0,
    left: 0,
    journal: [],
  };
}

export const nodeOf = (transport: Transport, item: number): number => {
  const cell = transport.at[item]!;
  return cell === NOWHERE ? NOWHERE : transport.options.node[cell]!;
};

/** Takes the item out of its node, without repairing anything. */
export function takeOut(transport: Transport, item: number): void {
  const cell = transport.at[item]!;
  if (cell === NOWHERE) return;
  const { head, next, previous, options } = transport;
  const node = options.node[cell]!;
  const before = previous[item]!;
  const after = next[item]!;
  if (before < 0) head[node] = after;
  else next[before] = after;
  if (after >= 0) previous[after] = before;
  transport.load[node]! -= 1;
  transport.cost -= options.cost[cell]!;
  transport.isStale[node] = 1;
  transport.at[item] = NOWHERE;
}

/** Puts an item that stands nowhere into an option, without repairing anything. */
export function putIn(transport: Transport, item: number, cell: number): void {
  const { head, next, previous, options } = transport;
  const node = options.node[cell]!;
  const after = head[node]!;
  head[node] = item;
  next[item] = after;
  previous[item] = -1;
  if (after >= 0) previous[after] = item;
  transport.load[node]! += 1;
  transport.cost += options.cost[cell]!;
  transport.isStale[node] = 1;
  transport.at[item] = cell;
}

export function moveTo(transport: Transport, item: number, cell: number): void {
  transport.journal.push(item, transport.at[item]!);
  takeOut(transport, item);
  putIn(transport, item, cell);
}

/** The cheapest move to each other node, made again after the node's items have changed. */
export function renewMoves(transport: Transport, node: number): void {
  const { nodes, options, head, next, moveCost, moveCell, moveItem, at } = transport;
  const row = node * nodes;
  moveCost.fill(Number.POSITIVE_INFINITY, row, row + nodes);
  let from = nodes - 1;
  let to = 0;
  for (let item = head[node]!; item >= 0; item = next[item]!) {
    const own = options.cost[at[item]!]!;
    const end = options.end[item]!;
    for (let cell = options.first[item]!; cell < end; cell += 1) {
      const other = options.node[cell]!;
      const cost = options.cost[cell]! - own;
      if (cost >= moveCost[row + other]!) continue;
      moveCost[row + other] = cost;
      moveCell[row + other] = cell;
      moveItem[row + other] = item;
      if (other === nodes - 1) continue;
      if (other < from) from = other;
      if (other >= to) to = other + 1;
    }
  }
  moveCost[row + node] = Number.POSITIVE_INFINITY;
  transport.reachFrom[node] = from;
  transport.reachTo[node] = to;
  transport.isStale[node] = 0;
  if (node < nodes - 1) transport.span = Math.max(transport.span, node - from, to - 1 - node);
}

/** The option in which cost and price together are least. */
export function cheapestCell({ options, price }: Transport, item: number): number {
  let best = options.first[item]!;
  let least = Number.POSITIVE_INFINITY;
  for (let cell = options.first[item]!; cell < options.end[item]!; cell += 1) {
    const cost = options.cost[cell]! + price[options.node[cell]!]!;
    if (cost >= least) continue;
    least = cost;
    best = cell;
  }
  return best;
}
