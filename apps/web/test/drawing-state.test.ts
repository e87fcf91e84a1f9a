/** A day drawn by hand on a board: what Escape, letting go and undo come back to. */
import { type Day, planAtOnce, readAnyDay } from '@twelvemonth/planning';
import { expect, test } from 'vitest';
import { type DrawingAct, drawingAfter, drawingOf } from '../src/sessions/board/drawing-state.ts';
import { liesOnAnother } from '../src/sessions/board/seat.ts';

function madeUpDay(): Day {
  const visit = (name: string) => ({ name, kind: 'later infusion', infusionMinutes: 15 });
  const read = readAnyDay({
    id: 'made up',
    opens: '08:30',
    closes: '12:30',
    gridMinutes: 5,
    nurses: 2,
    watchedPerNurse: 4,
    chairs: 3,
    watchPlaces: 1,
    preparers: 1,
    secondCheckers: 1,
    visits: ['Mrs Ito', 'Mr Okafor', 'Miss Lund'].map(visit),
  });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.day;
}

const day = madeUpDay();
const begun = drawingOf(day, planAtOnce(day).plan);
const after = (...acts: readonly DrawingAct[]) => acts.reduce(drawingAfter, begun);
const arrival = (state: typeof begun, visit = 2): number | undefined => state.now.plan[visit]?.arrives;
const later: DrawingAct = { does: 'step', visit: 2, ticks: 1, chairs: 0 };

test('arrow keys move a visit step by step, and Escape takes all of them back', () => {
  const moved = after(later, later, later);
  expect(arrival(moved)).toBe(arrival(begun)! + 3);
  expect(drawingAfter(moved, { does: 'take back' }).now).toBe(begun.now);
  expect(drawingAfter(moved, { does: 'take back' }).past).toEqual([]);
});

test('once let go, undo takes the whole move back, not its last step', () => {
  const undone = after(later, later, { does: 'let go' }, { does: 'undo' });
  expect(undone.now).toBe(begun.now);
});

test('a drag is counted from where the visit was taken up, so going there and back moves nothing', () => {
  const drag = (ticks: number): DrawingAct => ({ does: 'drag', ticks, chairs: 0 });
  const back = after({ does: 'hold', visit: 2 }, drag(4), drag(7), drag(0), { does: 'let go' });
  expect(back.now).toBe(begun.now);
  expect(back.past).toEqual([]);
  const there = after({ does: 'hold', visit: 2 }, drag(4), drag(7), { does: 'let go' });
  expect(arrival(there)).toBe(arrival(begun)! + 7);
  expect(there.past).toHaveLength(1);
});

test('a visit dragged out of the day stops at its edge', () => {
  const gone = after({ does: 'hold', visit: 2 }, { does: 'drag', ticks: 10_000, chairs: 0 });
  const times = gone.now.plan[2]!;
  expect(times.starts.at(-1)! + day.visits[2]!.steps.at(-1)!.ticks).toBe(day.ticks);
});

test('up and down give another chair, never one that is not there', () => {
  expect(after({ does: 'move', visit: 0, ticks: 0, chairs: -9 }).now.chairs[0]).toBe(1);
  expect(after({ does: 'move', visit: 0, ticks: 0, chairs: 9 }).now.chairs[0]).toBe(3);
});

test('a locked visit does not move, and undo unlocks it again', () => {
  const locked = after({ does: 'lock', visit: 2, lock: 'time' });
  expect(arrival(drawingAfter(locked, later))).toBe(arrival(begun));
  expect(drawingAfter(locked, { does: 'undo' }).now.locks[2]).toBeUndefined();
});

test('taking up another visit lets go of the one before', () => {
  const both = after(later, { does: 'step', visit: 1, ticks: 2, chairs: 0 }, { does: 'take back' });
  expect([arrival(both, 2), arrival(both, 1)]).toEqual([arrival(begun, 2)! + 1, arrival(begun, 1)]);
});

test('a card lies on another only in the same chair at the same time: in a proposed day none does', () => {
  const lies = ({ now }: typeof begun) => [0, 1, 2].filter((visit) => liesOnAnother(day, now, visit));
  expect(lies(begun)).toEqual([]);
  const chair = (visit: number): number => begun.now.chairs[visit] ?? 0;
  const onto = after({
    does: 'move',
    visit: 2,
    ticks: arrival(begun, 0)! - arrival(begun)!,
    chairs: chair(0) - chair(2),
  });
  expect(onto.now.chairs[2]).toBe(chair(0));
  expect(lies(onto)).toEqual([0, 2]);
});
