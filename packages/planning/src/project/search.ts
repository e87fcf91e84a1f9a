/**
 * Better and better orders of a project's tasks: a small population, two orders crossed at two places, a few tasks
 * shifted, and each schedule pushed to its end and back to its beginning (Hartmann 1998; forward-backward improvement, Tormos
 * and Lova 2001; both from memory). Starts afresh when the population has grown alike.
 */
import { type Draw, drawFrom } from '../random.ts';
import type { Limit } from '../search/limit.ts';
import { type Builder, build, builderFor, orderByEnd } from './build.ts';
import { type Layout, type Side, layoutOf } from './layout.ts';
import type { Project } from './project.ts';

export type ProjectResult = {
  readonly starts: Int32Array;
  readonly length: number;
  /** No schedule is shorter; equal to the length: proven best. */
  readonly atLeast: number;
  readonly schedules: number;
};

const population = 40;
const mostShifted = 14;
const askEvery = 8;
const stale = 600;
const bias = 3;

type Search = {
  readonly layout: Layout;
  readonly builder: Builder;
  readonly draw: Draw;
  readonly limit: Limit;
  readonly back: Int16Array;
  /** For every pair of tasks: 1 if the second must follow the first at once in the relation. */
  readonly follows: Uint8Array;
  best: number;
  bestEnds: Int32Array;
  schedules: number;
};

type Member = { readonly order: Int16Array; length: number };

/** Pushes a schedule to its end and back, and keeps the order that comes of it. */
function judge(search: Search, member: Member): void {
  const { builder, layout, back } = search;
  let length = build(builder, layout.forward, member.order);
  keep(search, length);
  orderByEnd(builder, member.order, back, length);
  const mirrored = build(builder, layout.backward, back);
  orderByEnd(builder, back, member.order, mirrored);
  length = build(builder, layout.forward, member.order);
  keep(search, length);
  search.schedules += 3;
  member.length = length;
}

function keep(search: Search, length: number): void {
  if (length >= search.best) return;
  search.best = length;
  search.bestEnds = search.builder.ends.slice();
}

/** An order by chance, the tasks with the longest way to the end preferred. */
function anyOrder({ layout, draw }: Search): Int16Array {
  const { tasks, forward, backward, tail } = layout;
  const open = Int32Array.from({ length: tasks }, (_, task) => forward.first[task + 1]! - forward.first[task]!);
  const ready = [...open.keys()].filter((task) => open[task] === 0);
  const order = new Int16Array(tasks);
  for (let at = 0; at < tasks; at += 1) {
    let chosen = draw(ready.length);
    for (let round = 1; round < bias; round += 1) {
      const other = draw(ready.length);
      if (tail[ready[other]!]! > tail[ready[chosen]!]!) chosen = other;
    }
    const task = ready[chosen]!;
    ready[chosen] = ready.at(-1)!;
    ready.pop();
    order[at] = task;
    for (let cell = backward.first[task]!; cell < backward.first[task + 1]!; cell += 1) {
      const next = backward.before[cell]!;
      open[next]! -= 1;
      if (open[next] === 0) ready.push(next);
    }
  }
  return order;
}

/** The child has the beginning and the end of one parent and the middle in the other parent's order. */
function cross(
  { layout, draw }: Search,
  mother: Int16Array,
  father: Int16Array,
  child: Int16Array,
  has: Uint8Array,
): void {
  const { tasks } = layout;
  const one = draw(tasks);
  const other = draw(tasks);
  const from = Math.min(one, other);
  const to = Math.max(one, other);
  has.fill(0);
  let at = 0;
  for (; at < from; at += 1) {
    child[at] = mother[at]!;
    has[child[at]!] = 1;
  }
  for (let index = 0; at < to; index += 1) {
    const task = father[index]!;
    if (has[task] === 1) continue;
    child[at] = task;
    has[task] = 1;
    at += 1;
  }
  for (let index = 0; at < tasks; index += 1) {
    const task = mother[index]!;
    if (has[task] === 1) continue;
    child[at] = task;
    at += 1;
  }
}

/** Moves a few tasks to any place between what comes before and what comes after them. */
function shiftSome({ layout, draw }: Search, order: Int16Array): void {
  const { tasks, forward, backward } = layout;
  for (let left = 1 + draw(mostShifted); left > 0; left -= 1) {
    const at = draw(tasks);
    const task = order[at]!;
    let low = at;
    let high = at;
    while (low > 0 && !contains(forward, task, order[low - 1]!)) low -= 1;
    while (high + 1 < tasks && !contains(backward, task, order[high + 1]!)) high += 1;
    const to = low + draw(high - low + 1);
    if (to < at) order.copyWithin(to + 1, to, at);
    else order.copyWithin(at, at + 1, to + 1);
    order[to] = task;
  }
}

function contains({ first, before }: Side, task: number, other: number): boolean {
  for (let cell = first[task]!; cell < first[task + 1]!; cell += 1) if (before[cell] === other) return true;
  return false;
}

const isOver = ({ limit, schedules, best, layout }: Search): boolean =>
  best <= layout.atLeast ||
  schedules >= limit.iterations ||
  (schedules % (3 * askEvery) === 0 && limit.stop?.() === true);

/** One population from its first members until it has grown alike or the search is over. */
function generation(search: Search): void {
  const members: Member[] = [];
  while (members.length < population) {
    const member = { order: anyOrder(search), length: 0 };
    judge(search, member);
    members.push(member);
    if (isOver(search)) return;
  }
  const has = new Uint8Array(search.layout.tasks);
  const pick = (): Member => {
    const one = members[search.draw(population)]!;
    const other = members[search.draw(population)]!;
    return one.length <= other.length ? one : other;
  };
  let child: Member = { order: new Int16Array(search.layout.tasks), length: 0 };
  for (let idle = 0; idle < stale && !isOver(search);) {
    cross(search, pick().order, pick().order, child.order, has);
    shiftSome(search, child.order);
    judge(search, child);
    let worst = 0;
    for (let index = 1; index < population; index += 1)
      if (members[index]!.length >= members[worst]!.length) worst = index;
    const isNew = members.every(({ length, order }) => length !== child.length || differ(order, child.order));
    if (child.length > members[worst]!.length || !isNew) {
      idle += 1;
      continue;
    }
    idle = child.length < members[worst]!.length ? 0 : idle + 1;
    const gone = members[worst]!;
    members[worst] = child;
    child = gone;
  }
}

const differ = (one: Int16Array, other: Int16Array): boolean => one.some((task, index) => other[index] !== task);

/** `iterations` of the limit are schedules built. */
export function scheduleProject(project: Project, seed: number, limit: Limit): ProjectResult {
  const layout = layoutOf(project);
  const follows = new Uint8Array(layout.tasks * layout.tasks);
  project.tasks.forEach(({ successors }, task) =>
    successors.forEach((successor) => (follows[task * layout.tasks + successor] = 1)),
  );
  const search: Search = {
    layout,
    builder: builderFor(layout),
    draw: drawFrom(seed),
    limit,
    back: new Int16Array(layout.tasks),
    follows,
    best: Number.POSITIVE_INFINITY,
    bestEnds: new Int32Array(layout.tasks),
    schedules: 0,
  };
  do generation(search);
  while (!isOver(search));
  const starts = search.bestEnds.map((end, task) => end - layout.length[task]!);
  return { starts, length: search.best, atLeast: layout.atLeast, schedules: search.schedules };
}
