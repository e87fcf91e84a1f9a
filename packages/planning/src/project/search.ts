/**
 * Better and better orders of a project's tasks: a population, two orders crossed, a few tasks shifted, and each schedule
 * pushed to its end and back to its beginning (Hartmann 1998; forward-backward improvement, Tormos and Lova 2001; both from
 * memory). Starts afresh when the population has grown alike. Where tasks are few, it is asked in between whether anything
 * shorter exists at all.
 */
import { type Draw, drawFrom } from '../random.ts';
import type { Limit } from '../search/limit.ts';
import { anyOrder } from './any-order.ts';
import { type Builder, build, builderFor, orderByEnd } from './build.ts';
import { withinLength } from './exact.ts';
import { type Layout, layoutOf } from './layout.ts';
import { cross } from './moves/cross.ts';
import { shiftSome } from './moves/shift-some.ts';
import type { Project } from './project.ts';

export type ProjectResult = {
  readonly starts: Int32Array;
  readonly length: number;
  /** No schedule is shorter; equal to the length: proven best. */
  readonly atLeast: number;
  readonly schedules: number;
};

const population = 120;
const askEvery = 8;
const stale = 2_000;
/** Up to this many tasks it is worth asking whether anything shorter exists. */
const fewTasks = 40;
/** Schedules built before it is asked for the first time, and contradictions the first answer may take; both double. */
const firstAsked = { schedules: 3_000, contradictions: 300 };

type Search = {
  readonly project: Project;
  readonly layout: Layout;
  readonly builder: Builder;
  readonly draw: Draw;
  readonly limit: Limit;
  readonly back: Int16Array;
  /** Schedules after which it is asked again whether anything shorter exists; never, where tasks are many. */
  askAt: number;
  contradictions: number;
  atLeast: number;
  best: number;
  bestEnds: Int32Array;
  schedules: number;
};

type Member = { readonly order: Int16Array; length: number };

/** Pushes a schedule to its end and back, and keeps the order that comes of it. */
function judge(search: Search, member: Member): void {
  const { builder, layout, back } = search;
  let length = build(builder, layout.forward, member.order);
  keep(search, length, builder.ends);
  orderByEnd(builder, member.order, back, length);
  const mirrored = build(builder, layout.backward, back);
  orderByEnd(builder, back, member.order, mirrored);
  length = build(builder, layout.forward, member.order);
  keep(search, length, builder.ends);
  search.schedules += 3;
  member.length = length;
}

function keep(search: Search, length: number, ends: Int32Array): void {
  if (length >= search.best) return;
  search.best = length;
  search.bestEnds = ends.slice();
}

const startsOf = ({ bestEnds, layout }: Search): Int32Array => bestEnds.map((end, task) => end - layout.length[task]!);

/** Asks for anything shorter until there is nothing, or no answer comes. */
function askForShorter(search: Search): void {
  const { project, layout, limit } = search;
  while (search.best > search.atLeast) {
    const question = {
      contradictions: search.contradictions,
      ...(limit.stop === undefined ? {} : { stop: limit.stop }),
    };
    const found = withinLength(project, layout.tail, search.best - 1, startsOf(search), question);
    if (found.answer === 'not known') break;
    if (found.answer === 'impossible') {
      search.atLeast = search.best;
      break;
    }
    const ends = found.starts.map((start, task) => start + layout.length[task]!);
    keep(
      search,
      ends.reduce((latest, end) => Math.max(latest, end), 0),
      ends,
    );
  }
  search.askAt *= 2;
  search.contradictions *= 2;
}

function isOver(search: Search): boolean {
  const { limit, schedules } = search;
  if (schedules >= search.askAt) askForShorter(search);
  return (
    search.best <= search.atLeast ||
    schedules >= limit.iterations ||
    (schedules % (3 * askEvery) === 0 && limit.stop?.() === true)
  );
}

/** One population from its first members until it has grown alike or the search is over. */
function generation(search: Search): void {
  const { layout, draw } = search;
  const members: Member[] = [];
  while (members.length < population) {
    const member = { order: anyOrder(layout, draw), length: 0 };
    judge(search, member);
    members.push(member);
    if (isOver(search)) return;
  }
  const has = new Uint8Array(layout.tasks);
  const pick = (): Member => {
    const one = members[draw(population)]!;
    const other = members[draw(population)]!;
    return one.length <= other.length ? one : other;
  };
  let child: Member = { order: new Int16Array(layout.tasks), length: 0 };
  for (let idle = 0; idle < stale && !isOver(search);) {
    cross(draw, pick().order, pick().order, child.order, has);
    shiftSome(layout, draw, child.order);
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
  const search: Search = {
    project,
    layout,
    builder: builderFor(layout),
    draw: drawFrom(seed),
    limit,
    back: new Int16Array(layout.tasks),
    askAt: layout.tasks <= fewTasks ? firstAsked.schedules : Number.POSITIVE_INFINITY,
    contradictions: firstAsked.contradictions,
    atLeast: layout.atLeast,
    best: Number.POSITIVE_INFINITY,
    bestEnds: new Int32Array(layout.tasks),
    schedules: 0,
  };
  do generation(search);
  while (!isOver(search));
  const { best, atLeast, schedules } = search;
  return { starts: startsOf(search), length: best, atLeast, schedules };
}
