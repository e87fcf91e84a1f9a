/** Items that come, go and give way: after each change the problem is at its optimum again. */
import { atLeastZero, chainInto, chainOut } from './chains.ts';
import { NOWHERE, type Transport, cheapestCell, moveTo, nodeOf, putIn, takeOut } from './transport.ts';

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

/** What room for one more in a node would save. */
export function worthOfRoom(transport: Transport, target: number): number {
  if (transport.price[target] === 0) return 0;
  chainInto(transport, target);
  return transport.price[target]! - transport.left;
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
