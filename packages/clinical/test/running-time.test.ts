/** Running time: the rule of the design page. Shortest time 15 minutes: product text of zoledronic acid 5 mg (EU/UK) 4.2. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type ClockMark, type ClockReading, runningTime } from '@twelvemonth/clinical';

const minute = 60_000;
const begun = Date.parse('2027-01-28T10:51:00.000Z');
const reading = (
  minutes: number,
  { boot = 'b1', wallOff = 0, booted = 0 }: { boot?: string; wallOff?: number; booted?: number } = {},
): ClockReading => ({
  boot,
  uptimeMilliseconds: (minutes - booted) * minute,
  wall: new Date(begun + (minutes + wallOff) * minute).toISOString(),
});
const started: ClockMark = { what: 'started', clock: reading(0) };
const minutesOf = (marks: ClockMark[], until: ClockReading): number | undefined => {
  const ran = runningTime(marks, until);
  return ran.measured ? ran.milliseconds / minute : undefined;
};

describe('running time', () => {
  test('within one boot it is the difference of uptimes', () => {
    expect(minutesOf([started], reading(15))).toBe(15);
  });
  test.each([-120, -10, 10, 240])('a wall clock put %d minutes off within one boot changes nothing', (wallOff) => {
    expect(minutesOf([started], reading(15, { wallOff }))).toBe(15);
  });
  test('paused minutes do not count', () => {
    const marks: ClockMark[] = [
      started,
      { what: 'paused', clock: reading(6) },
      { what: 'resumed', clock: reading(16) },
    ];
    expect(minutesOf(marks, reading(20))).toBe(10);
  });
  test('while paused it stands still', () => {
    const marks: ClockMark[] = [started, { what: 'paused', clock: reading(6) }];
    expect(minutesOf(marks, reading(60))).toBe(6);
  });
  test('after a restart the wall clock survives', () => {
    expect(minutesOf([started], reading(16, { boot: 'b2', booted: 12 }))).toBe(16);
  });
  test('a restart and a wall clock put back: cannot be measured', () => {
    expect(minutesOf([started], reading(16, { boot: 'b2', booted: 12, wallOff: -60 }))).toBeUndefined();
  });
  test('a wall clock that says less than the new boot has been up was put back: cannot be measured', () => {
    expect(minutesOf([started], reading(40, { boot: 'b2', booted: 5, wallOff: -10 }))).toBeUndefined();
  });
  test('a restart during a pause costs nothing: both stretches were measured', () => {
    const marks: ClockMark[] = [
      started,
      { what: 'paused', clock: reading(6) },
      { what: 'resumed', clock: reading(30, { boot: 'b2', booted: 20, wallOff: -500 }) },
    ];
    expect(minutesOf(marks, reading(40, { boot: 'b2', booted: 20, wallOff: 900 }))).toBe(16);
  });
  test('whatever is done to the wall clock and however it is paused, one boot never says more than it ran', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ run: fc.integer({ min: 0, max: 20 }), pause: fc.integer({ min: 0, max: 20 }) }), {
          maxLength: 6,
        }),
        fc.array(fc.integer({ min: -600, max: 600 }), { minLength: 14, maxLength: 14 }),
        (turns, offs) => {
          let at = 0;
          let truth = 0;
          const marks: ClockMark[] = [started];
          turns.forEach(({ run, pause }, index) => {
            at += run;
            truth += run;
            marks.push({ what: 'paused', clock: reading(at, { wallOff: offs[index * 2] ?? 0 }) });
            at += pause;
            marks.push({ what: 'resumed', clock: reading(at, { wallOff: offs[index * 2 + 1] ?? 0 }) });
          });
          expect(minutesOf(marks, reading(at))).toBe(truth);
        },
      ),
      { seed: 20_270_128, numRuns: 300 },
    );
  });
});
