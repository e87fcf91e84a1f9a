/** The open facts, the one that took part in most recent contradictions on top. */

export type FactHeap = {
  readonly activity: Float64Array;
  readonly heap: Int32Array;
  /** Place in the heap, -1 when not in it. */
  readonly place: Int32Array;
  size: number;
  step: number;
};

const growth = 1 / 0.95;
const tooLarge = 1e100;

export function factHeap(facts: number): FactHeap {
  const heap = {
    activity: new Float64Array(facts),
    heap: new Int32Array(facts),
    place: new Int32Array(facts).fill(-1),
    size: 0,
    step: 1,
  };
  for (let fact = 1; fact < facts; fact += 1) putBack(heap, fact);
  return heap;
}

function rise(heap: FactHeap, from: number): void {
  const { heap: cells, place, activity } = heap;
  const fact = cells[from]!;
  let at = from;
  while (at > 0) {
    const parent = (at - 1) >> 1;
    if (activity[cells[parent]!]! >= activity[fact]!) break;
    cells[at] = cells[parent]!;
    place[cells[at]!] = at;
    at = parent;
  }
  cells[at] = fact;
  place[fact] = at;
}

function sink(heap: FactHeap, from: number): void {
  const { heap: cells, place, activity, size } = heap;
  const fact = cells[from]!;
  let at = from;
  for (let child = 2 * at + 1; child < size; child = 2 * at + 1) {
    if (child + 1 < size && activity[cells[child + 1]!]! > activity[cells[child]!]!) child += 1;
    if (activity[cells[child]!]! <= activity[fact]!) break;
    cells[at] = cells[child]!;
    place[cells[at]!] = at;
    at = child;
  }
  cells[at] = fact;
  place[fact] = at;
}

export function putBack(heap: FactHeap, fact: number): void {
  if (heap.place[fact]! >= 0 || fact === 0) return;
  heap.heap[heap.size] = fact;
  heap.size += 1;
  rise(heap, heap.size - 1);
}

export function takeTop(heap: FactHeap): number {
  if (heap.size === 0) return -1;
  const top = heap.heap[0]!;
  heap.place[top] = -1;
  heap.size -= 1;
  if (heap.size > 0) {
    const last = heap.heap[heap.size]!;
    heap.heap[0] = last;
    heap.place[last] = 0;
    sink(heap, 0);
  }
  return top;
}

export function bump(heap: FactHeap, fact: number): void {
  heap.activity[fact]! += heap.step;
  if (heap.activity[fact]! > tooLarge) {
    for (let other = 0; other < heap.activity.length; other += 1) heap.activity[other]! /= tooLarge;
    heap.step /= tooLarge;
  }
  if (heap.place[fact]! >= 0) rise(heap, heap.place[fact]!);
}

export const fade = (heap: FactHeap): void => {
  heap.step *= growth;
};
