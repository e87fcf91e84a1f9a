/** A queue that gives back the nearest node first. A node may stand in it more than once; whoever takes it out knows. */
export type Nearest = { readonly key: Float64Array; readonly node: Int16Array; size: number };

export const nearestOf = (capacity: number): Nearest => ({
  key: new Float64Array(capacity),
  node: new Int16Array(capacity),
  size: 0,
});

export function push(queue: Nearest, node: number, key: number): void {
  const { key: keys, node: nodes } = queue;
  let at = queue.size;
  queue.size += 1;
  while (at > 0) {
    const parent = (at - 1) >> 1;
    if (keys[parent]! <= key) break;
    keys[at] = keys[parent]!;
    nodes[at] = nodes[parent]!;
    at = parent;
  }
  keys[at] = key;
  nodes[at] = node;
}

/** The queue must not be empty. */
export function takeNearest(queue: Nearest): number {
  const { key: keys, node: nodes } = queue;
  const nearest = nodes[0]!;
  queue.size -= 1;
  const size = queue.size;
  const key = keys[size]!;
  const node = nodes[size]!;
  let at = 0;
  for (let child = 1; child < size; child = 2 * at + 1) {
    if (child + 1 < size && keys[child + 1]! < keys[child]!) child += 1;
    if (keys[child]! >= key) break;
    keys[at] = keys[child]!;
    nodes[at] = nodes[child]!;
    at = child;
  }
  keys[at] = key;
  nodes[at] = node;
  return nearest;
}
