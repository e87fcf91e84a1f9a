/**
 * A project laid out for the search. Needs of several resources are packed into one 32-bit word, each with a guard bit above
 * it: whether everything fits is then one subtraction (a guard bit that is borrowed from has run out).
 */
import type { Project } from './project.ts';

export type Side = {
  /** Tasks before each task, from first[task] up to first[task + 1]. */
  readonly first: Int32Array;
  readonly before: Int16Array;
};

export type Layout = {
  readonly tasks: number;
  readonly words: number;
  readonly length: Int32Array;
  /** By word and task. */
  readonly needs: Int32Array;
  /** By word: what there is. */
  readonly free: Int32Array;
  readonly guards: number;
  readonly forward: Side;
  readonly backward: Side;
  /** For every pair of tasks: 1 if the second comes straight after the first. */
  readonly follows: Uint8Array;
  readonly horizon: number;
  /** Length of the longest chain from the beginning of each task to the end. */
  readonly tail: Int32Array;
  /** No schedule is shorter. */
  readonly atLeast: number;
};

const wordBits = 32;
const narrow = { bits: 8, most: 127, guards: 0x80808080 | 0 };
const wide = { bits: 16, most: 32_767, guards: 0x80008000 | 0 };

function sideOf(before: readonly (readonly number[])[]): Side {
  const first = new Int32Array(before.length + 1);
  before.forEach((list, task) => (first[task + 1] = first[task]! + list.length));
  return { first, before: Int16Array.from(before.flat()) };
}

export function layoutOf({ tasks, capacity }: Project): Layout {
  const field = capacity.every((units) => units <= narrow.most) ? narrow : wide;
  if (capacity.some((units) => units > wide.most)) throw new RangeError(`at most ${wide.most} units of a resource`);
  const each = wordBits / field.bits;
  const words = Math.max(1, Math.ceil(capacity.length / each));
  const pack = (values: readonly number[], word: number): number =>
    values
      .slice(word * each, (word + 1) * each)
      .reduce((packed, value, at) => packed | (value << (at * field.bits)), 0);
  const before: number[][] = tasks.map(() => []);
  tasks.forEach(({ successors }, task) => successors.forEach((successor) => before[successor]!.push(task)));
  const tail = new Int32Array(tasks.length);
  for (let task = tasks.length - 1; task >= 0; task -= 1) {
    const own = tasks[task]!;
    tail[task] = own.length + own.successors.reduce((most, successor) => Math.max(most, tail[successor]!), 0);
  }
  const follows = new Uint8Array(tasks.length * tasks.length);
  tasks.forEach(({ successors }, task) =>
    successors.forEach((successor) => (follows[task * tasks.length + successor] = 1)),
  );
  const work = capacity.map((units, resource) =>
    Math.ceil(tasks.reduce((sum, { length, needs }) => sum + length * (needs[resource] ?? 0), 0) / Math.max(1, units)),
  );
  return {
    tasks: tasks.length,
    words,
    length: Int32Array.from(tasks, ({ length }) => length),
    needs: Int32Array.from({ length: words * tasks.length }, (_, cell) =>
      pack(tasks[cell % tasks.length]!.needs, Math.floor(cell / tasks.length)),
    ),
    free: Int32Array.from({ length: words }, (_, word) => pack(capacity, word)),
    guards: field.guards,
    forward: sideOf(before),
    backward: sideOf(tasks.map(({ successors }) => successors)),
    follows,
    horizon: tasks.reduce((sum, { length }) => sum + length, 0) + 1,
    tail,
    atLeast: Math.max(0, ...tail, ...work),
  };
}
