/** Chains of moves from node to node, the cheapest first: shortest paths over what the moves cost above the prices. */
import { push, takeNearest } from './nearest.ts';
import { type Transport, renewMoves } from './transport.ts';

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
export const atLeastZero = (value: number): number => (value > 0 ? value : 0);

/**
 * Looks for the cheapest chain of moves that takes one item out of a node, ending in a node with room. Returns its last node,
 * -1 if every chain costs more than `most`; what it costs is in `distance` there, above the prices.
 */
export function chainOut(transport: Transport, source: number, most: number): number {
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

/**
 * Looks for the chain of moves into a node that saves most. Returns the node it begins in, the target itself if no chain
 * saves anything; `saved` is what the room in the target is then still worth.
 */
export function chainInto(transport: Transport, target: number): number {
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
    // From farther away nobody can come, but those outside.
    const isOutside = node === nodes - 1;
    const until = isOutside ? nodes : Math.min(nodes, node + transport.span + 1);
    for (let other = isOutside ? 0 : Math.max(0, node - transport.span); ; other += 1) {
      if (other >= until) {
        if (other >= nodes) break;
        other = nodes - 1;
      }
      const reached = base + atLeastZero(moveCost[other * nodes + node]! + into - price[other]!);
      if (reached >= left || reached >= distance[other]!) continue;
      distance[other] = reached;
      via[other] = node;
      push(queue, other, reached);
    }
  }
  transport.left = left;
  return source;
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
