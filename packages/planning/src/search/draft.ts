/** A plan in the making: the times of those placed, and the room left beside them. */
import { type Blocks, blocksOf } from './block.ts';
import { ARRIVES, LEAVES, type Problem, stride } from './problem.ts';
import { type Room, emptyRoom, giveBack, take, waitIn } from './room.ts';

export type Draft = {
  readonly problem: Problem;
  readonly blocks: Blocks;
  readonly room: Room;
  readonly times: Int16Array;
  /** By visit: the arrival the person has been told, -1 if none. */
  readonly told: Int16Array;
};

export function emptyDraft(problem: Problem): Draft {
  const times = new Int16Array(problem.visits * stride).fill(-1);
  const told = new Int16Array(problem.visits).fill(-1);
  return { problem, blocks: blocksOf(problem), room: emptyRoom(problem), times, told };
}

export const isPlaced = ({ times }: Draft, visit: number): boolean => times[visit * stride + LEAVES]! >= 0;

export function put({ problem, room, times }: Draft, visit: number): void {
  take(problem, room, visit, times);
}

export function lift(draft: Draft, visit: number): void {
  if (isPlaced(draft, visit)) giveBack(draft.problem, draft.room, visit, draft.times);
}

/** Makes the draft that of other times; those without a place in them have none. */
export function become(draft: Draft, times: Int16Array): void {
  for (let visit = 0; visit < draft.problem.visits; visit += 1) lift(draft, visit);
  draft.times.set(times);
  for (let visit = 0; visit < draft.problem.visits; visit += 1) if (isPlaced(draft, visit)) put(draft, visit);
}

const most = { overtime: 2 ** 11, disturbed: 2 ** 8, wait: 2 ** 16, finish: 2 ** 11 };

/** The objective as one number, smaller is better: unseen, overtime, people told another arrival, wait, finish. */
export function rank({ problem, times, told }: Draft): number {
  let unseen = 0;
  let wait = 0;
  let disturbed = 0;
  let finish = 0;
  for (let visit = 0; visit < problem.visits; visit += 1) {
    const leaves = times[visit * stride + LEAVES]!;
    if (leaves < 0) {
      unseen += 1;
      continue;
    }
    wait += waitIn(problem, visit, times);
    if (told[visit]! >= 0 && told[visit] !== times[visit * stride + ARRIVES]) disturbed += 1;
    if (leaves > finish) finish = leaves;
  }
  const overtime = Math.max(0, finish - problem.closes);
  return (((unseen * most.overtime + overtime) * most.disturbed + disturbed) * most.wait + wait) * most.finish + finish;
}

export const finishOfRank = (value: number): number => value % most.finish;
