/** How long something ran is counted: by neither a wall clock that is moved nor a counter that slept. */
import { afterEach, describe, expect, test, vi } from 'vitest';
import { systemClock } from '../src/clock.ts';

const up = { machine: 5000, process: 100 };
const counters = { machine: () => up.machine, process: () => up.process };
const passes = (machine: number, process = machine): void => {
  up.machine += machine;
  up.process += process;
};
const secondsUp = (clock: ReturnType<typeof systemClock>): number => clock.reading().uptimeMilliseconds / 1000;
afterEach(() => void vi.useRealTimers());

describe('the clocks of the server', () => {
  test('what passed is counted to the part of a second', () => {
    const clock = systemClock(undefined, counters);
    const before = secondsUp(clock);
    passes(0, 0.4);
    expect(secondsUp(clock) - before).toBeCloseTo(0.4, 3);
  });
  test('a machine that slept: the process counted nothing, and the minutes went by all the same', () => {
    const clock = systemClock(undefined, counters);
    const before = secondsUp(clock);
    passes(600, 1);
    expect(secondsUp(clock) - before).toBeGreaterThanOrEqual(599);
  });
  test.each([-60, 60])('of a demo too: its wall clock put %d minutes off takes and adds nothing', (minutes) => {
    vi.useFakeTimers({ toFake: ['Date', 'Temporal'] });
    const clock = systemClock(
      { at: '2026-11-25T09:00', zone: 'Europe/London', clock: { boot: 'demo', aheadOfWall: 0 } },
      counters,
    );
    const before = secondsUp(clock);
    const wall = Date.parse(clock.now());
    vi.setSystemTime(Number(vi.getMockedSystemTime()) + minutes * 60_000);
    expect(Math.round((Date.parse(clock.now()) - wall) / 60_000)).toBe(minutes);
    passes(30);
    expect(secondsUp(clock) - before).toBeCloseTo(30, 1);
  });
});
