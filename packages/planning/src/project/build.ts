/**
 * A schedule from an order: each task in turn as soon as what comes before it has ended and everything it needs is free
 * (serial schedule generation, Kelley 1963). Backwards it is the same from the end.
 */
import type { Layout, Side } from './layout.ts';

export type Builder = {
  readonly layout: Layout;
  readonly free: Int32Array;
  readonly ends: Int32Array;
  readonly bucket: Int32Array;
  /** The end of the last schedule: beyond it everything is free still. */
  latest: number;
};

export const builderFor = (layout: Layout): Builder => ({
  layout,
  free: new Int32Array(layout.horizon * layout.words),
  ends: new Int32Array(layout.tasks),
  bucket: new Int32Array(layout.horizon + 1),
  latest: layout.horizon - 1,
});

/** The first moment from `from` at which the task fits. */
function firstFit({ layout, free }: Builder, task: number, from: number, length: number): number {
  const { guards, horizon, words, tasks, needs } = layout;
  let start = from;
  if (words === 1) {
    const need = needs[task]!;
    for (let at = start, end = start + length; at < end; at += 1) {
      if ((((free[at]! | guards) - need) & guards) === guards) continue;
      start = at + 1;
      end = start + length;
    }
    return start;
  }
  for (let at = start; at < start + length; at += 1) {
    for (let word = 0; word < words; word += 1) {
      const left = (free[word * horizon + at]! | guards) - needs[word * tasks + task]!;
      if ((left & guards) === guards) continue;
      start = at + 1;
      break;
    }
  }
  return start;
}

/** Builds a schedule; `ends` of the builder holds when each task ends. Returns the length. */
export function build(builder: Builder, side: Side, order: Int16Array): number {
  const { layout, free, ends } = builder;
  const { horizon, words, tasks, length, needs } = layout;
  const { first, before } = side;
  for (let word = 0; word < words; word += 1)
    free.fill(layout.free[word]!, word * horizon, word * horizon + builder.latest + 1);
  let latest = 0;
  for (let index = 0; index < tasks; index += 1) {
    const task = order[index]!;
    let from = 0;
    for (let cell = first[task]!, last = first[task + 1]!; cell < last; cell += 1) {
      const end = ends[before[cell]!]!;
      if (end > from) from = end;
    }
    const own = length[task]!;
    const start = own === 0 ? from : firstFit(builder, task, from, own);
    const end = start + own;
    for (let word = 0; word < words; word += 1) {
      const need = needs[word * tasks + task]!;
      const base = word * horizon;
      for (let at = base + start; at < base + end; at += 1) free[at]! -= need;
    }
    ends[task] = end;
    if (end > latest) latest = end;
  }
  builder.latest = latest;
  return latest;
}

/** Tasks by descending end, as an order for the other direction; those that end together as they stand in `order`, reversed. */
export function orderByEnd(
  { layout, ends, bucket }: Builder,
  order: Int16Array,
  into: Int16Array,
  latest: number,
): void {
  const { tasks } = layout;
  bucket.fill(0, 0, latest + 1);
  for (let task = 0; task < tasks; task += 1) bucket[ends[task]!]! += 1;
  let at = 0;
  for (let end = latest; end >= 0; end -= 1) {
    const count = bucket[end]!;
    bucket[end] = at;
    at += count;
  }
  for (let index = tasks - 1; index >= 0; index -= 1) {
    const task = order[index]!;
    into[bucket[ends[task]!]!] = task;
    bucket[ends[task]!]! += 1;
  }
}
