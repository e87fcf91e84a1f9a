/**
 * Items that each stand in one node at least total cost, with room for so many in each node: a transportation problem, kept at
 * its optimum while items come and go and rooms change. Every node has a price; at the optimum each item stands where its cost
 * and the price together are least, and only a full node has a price (linear duality). One change costs one or two shortest
 * paths over the nodes, whatever the number of items (successive shortest paths with potentials: Ahuja, Magnanti, Orlin 1993;
 * from memory). The last node is outside: it holds everyone and costs nothing to enter but the item's own cost there.
 */

import { type Nearest, nearestOf, push, takeNearest } from './nearest.ts';

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

function moveTo(transport: Transport, item: number, cell: number): void {
  transport.journal.push(item, transport.at[item]!);
  takeOut(transport, item);
  putIn(transport, item, cell);
}

/** The cheapest move to each other node, made again after the node's items have changed. */
function renewMoves(transport: Transport, node: number): void {
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
}

/** Begins a search at a node. */
function begin({ distance, isSettled, queue }: Transport, node: number): void {
  distance.fill(Number.POSITIVE_INFINITY);
  isSettled.fill(0);
  distance[node] = 0;
  queue.size = 0;
  push(queue, node, 0);
}

/** The nearest node not settled yet, now settled; -1 if there is none within `most`. */
function settleNearest({ distance, isSettled, queue }: Transport, most: number): number {
  while (queue.size > 0) {
    const node = takeNearest(queue);
    if (isSettled[node] === 1) continue;
    if (distance[node]! > most) return -1;
    isSettled[node] = 1;
    return node;
  }
  return -1;
}

/** Rounding of sums of prices must not make a distance negative. */
const atLeastZero = (value: number): number => (value > 0 ? value : 0);

function followPath(transport: Transport, source: number, target: number): void {
  const { via, moveCell, moveItem, nodes } = transport;
  // Moves are read off first: making one makes its row stale.
  const cells: number[] = [];
  const items: number[] = [];
  for (let node = target; node !== source; node = via[node]!) {
    cells.push(moveCell[via[node]! * nodes + node]!);
    items.push(moveItem[via[node]! * nodes + node]!);
  }
  cells.forEach((cell, index) => moveTo(transport, items[index]!, cell));
}

/**
 * Looks for the cheapest chain of moves that takes one item out of a node, ending in a node with room. Returns its last node,
 * -1 if every chain costs more than `most`; what it costs is in `distance` there, above the prices.
 */
function chainOut(transport: Transport, source: number, most: number): number {
  const { nodes, distance, via, queue, price, moveCost, load, room } = transport;
  const outside = nodes - 1;
  begin(transport, source);
  for (let node = settleNearest(transport, most); node >= 0; node = settleNearest(transport, most)) {
    if (node !== source && load[node]! < room[node]!) return node;
    if (transport.isStale[node] === 1) renewMoves(transport, node);
    const row = node * nodes;
    const base = distance[node]!;
    const away = price[node]!;
    const to = transport.reachTo[node]!;
    for (let other = transport.reachFrom[node]!; ; other += 1) {
      if (other >= to && other < outside) other = outside;
      const reached = base + atLeastZero(moveCost[row + other]! + price[other]! - away);
      if (reached < distance[other]! && reached <= most) {
        distance[other] = reached;
        via[other] = node;
        push(queue, other, reached);
      }
      if (other === outside) break;
    }
  }
  return -1;
}

/** What it would cost to take one item out of a node; infinite if more than `most`. */
export function costOfShedding(transport: Transport, source: number, most: number): number {
  const own = transport.price[source]!;
  const target = chainOut(transport, source, most - own);
  return target < 0 ? Number.POSITIVE_INFINITY : transport.distance[target]! + own;
}

/** Moves one item too many out of a node, along the cheapest chain of moves to a node with room. */
function shed(transport: Transport, source: number): void {
  const { nodes, distance, isSettled, price } = transport;
  const target = chainOut(transport, source, Number.POSITIVE_INFINITY);
  if (target < 0) throw new Error('the node outside has room for everyone');
  const reach = distance[target]!;
  for (let node = 0; node < nodes; node += 1)
    if (isSettled[node] === 1 && distance[node]! < reach) price[node]! += reach - distance[node]!;
  followPath(transport, source, target);
}

/**
 * Looks for the chain of moves into a node that saves most. Returns the node it begins in, the target itself if no chain
 * saves anything; `saved` is what the room in the target is then still worth.
 */
function chainInto(transport: Transport, target: number): number {
  const { nodes, distance, via, queue, price, moveCost } = transport;
  for (let node = 0; node < nodes; node += 1) if (transport.isStale[node] === 1) renewMoves(transport, node);
  begin(transport, target);
  let left = price[target]!;
  let source = target;
  for (let node = settleNearest(transport, left); node >= 0; node = settleNearest(transport, left)) {
    if (distance[node]! + price[node]! < left) {
      left = distance[node]! + price[node]!;
      source = node;
    }
    const base = distance[node]!;
    const into = price[node]!;
    for (let other = 0, cell = node; other < nodes; other += 1, cell += nodes) {
      const reached = base + atLeastZero(moveCost[cell]! + into - price[other]!);
      if (reached >= left || reached >= distance[other]!) continue;
      distance[other] = reached;
      via[other] = node;
      push(queue, other, reached);
    }
  }
  transport.left = left;
  return source;
}

/** What room for one more in a node would save. */
export function worthOfRoom(transport: Transport, target: number): number {
  if (transport.price[target] === 0) return 0;
  chainInto(transport, target);
  return transport.price[target]! - transport.left;
}

/**
 * Fills `distance` with what it costs, above the prices, to move one item out of `source` so that in the end one more stands
 * in the other node. A node with free room passes it on to any other. What is farther than `most` stays infinite.
 */
export function distancesFrom(transport: Transport, source: number, most: number): void {
  const { nodes, distance, queue, price, moveCost, load, room } = transport;
  const outside = nodes - 1;
  begin(transport, source);
  let isPassedOn = false;
  for (let node = settleNearest(transport, most); node >= 0; node = settleNearest(transport, most)) {
    const base = distance[node]!;
    if (!isPassedOn && load[node]! < room[node]!) {
      isPassedOn = true;
      for (let other = 0; other < outside; other += 1) {
        const reached = base + price[other]!;
        if (reached > most || reached >= distance[other]!) continue;
        distance[other] = reached;
        push(queue, other, reached);
      }
    }
    if (transport.isStale[node] === 1) renewMoves(transport, node);
    const row = node * nodes;
    const away = price[node]!;
    const to = transport.reachTo[node]!;
    for (let other = transport.reachFrom[node]!; ; other += 1) {
      if (other >= to && other < outside) other = outside;
      const reached = base + atLeastZero(moveCost[row + other]! + price[other]! - away);
      if (reached <= most && reached < distance[other]!) {
        distance[other] = reached;
        push(queue, other, reached);
      }
      if (other === outside) break;
    }
  }
}

/** Uses free room in a node that has a price: draws an item in along the best chain, or lowers the price to nothing. */
function draw(transport: Transport, target: number): void {
  const { nodes, distance, via, isSettled, price } = transport;
  const source = chainInto(transport, target);
  const { left } = transport;
  for (let node = 0; node < nodes; node += 1)
    if (isSettled[node] === 1 && distance[node]! < left)
      price[node] = atLeastZero(price[node]! - (left - distance[node]!));
  if (source === target) return;
  price[source] = 0;
  const cells: number[] = [];
  const items: number[] = [];
  for (let node = source; node !== target; node = via[node]!) {
    cells.push(transport.moveCell[node * nodes + via[node]!]!);
    items.push(transport.moveItem[node * nodes + via[node]!]!);
  }
  cells.forEach((cell, index) => moveTo(transport, items[index]!, cell));
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

/** Brings a node whose room or items have changed back to the optimum. */
export function settle(transport: Transport, node: number): void {
  while (transport.load[node]! > transport.room[node]!) shed(transport, node);
  while (transport.load[node]! < transport.room[node]! && transport.price[node]! > 0) draw(transport, node);
}

/** Lets an item take part. */
export function enter(transport: Transport, item: number): void {
  const cell = cheapestCell(transport, item);
  transport.journal.push(item, NOWHERE);
  putIn(transport, item, cell);
  settle(transport, transport.options.node[cell]!);
}

export function leave(transport: Transport, item: number): void {
  const node = nodeOf(transport, item);
  if (node === NOWHERE) return;
  transport.journal.push(item, transport.at[item]!);
  takeOut(transport, item);
  settle(transport, node);
}
