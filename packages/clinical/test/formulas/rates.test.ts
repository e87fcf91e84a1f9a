/**
 * Pump and drip rates (nursing texts, read). Rows: clinical fact sheet 2g-ex (computed), 100 mL with 5 mg. 133 drops/min for
 * 100 mL in 15 min at 20 drops/mL is a published figure (nursing review of zoledronic acid infusion, read).
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkRate, dropsPerMinute, minutesAtRate, pumpMillilitersPerHour } from '@twelvemonth/clinical';

const LEAST = 15;

describe('100 mL', () => {
  test.each([
    [10, 600, 200, 600, 0.5, false],
    [15, 400, 133, 400, 0.3333, true],
    [20, 300, 100, 300, 0.25, true],
    // The sheet rounds to the nearest, 67: that would finish in 29.85 minutes. Ours never finishes early.
    [30, 200, 66, 200, 0.1667, true],
    [45, 133.33, 44, 133, 0.1111, true],
    [60, 100, 33, 100, 0.0833, true],
  ])(
    'in %i minutes: %d mL/h, %i and %i drops/min, %d mg/min, allowed: %s',
    (minutes, perHour, drops20, drops60, mg, allowed) => {
      const rate = pumpMillilitersPerHour(100, minutes);
      expect(rate).toBeCloseTo(perHour, 2);
      expect(dropsPerMinute(100, minutes, 20)).toBe(drops20);
      expect(dropsPerMinute(100, minutes, 60)).toBe(drops60);
      expect(5 / minutes).toBeCloseTo(mg, 4);
      expect(checkRate(100, rate, LEAST).allowed).toBe(allowed);
    },
  );

  test('the rounding trap: 133 drops of a 20-drop set take 15.04 minutes, 134 only 14.93', () => {
    expect((100 * 20) / 133).toBeCloseTo(15.04, 2);
    expect((100 * 20) / 134).toBeCloseTo(14.93, 2);
    expect(dropsPerMinute(100, LEAST, 20)).toBe(133);
  });
});

describe('published checks', () => {
  test('1200 mL over 6 hours at 15 drops/mL: 50 (worked sheet, read)', () =>
    expect(dropsPerMinute(1200, 360, 15)).toBe(50));
  test('200 mL over 120 minutes at 20 drops/mL: 33 (worked sheet, read)', () =>
    expect(dropsPerMinute(200, 120, 20)).toBe(33));
  // Reference sheet 2.10.
  test('450 mL/h gives 100 mL in 13.33 minutes: refused, in words', () => {
    expect(minutesAtRate(100, 450)).toBeCloseTo(13.333, 3);
    expect(checkRate(100, 450, LEAST)).toEqual({
      allowed: false,
      says: '450 mL/h gives 100 mL in 13.33 minutes, less than 15',
    });
  });
});

test('drops are rounded down: whatever the volume, set and time, nothing ends before the minutes asked for', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 1000 }),
      fc.integer({ min: LEAST, max: 240 }),
      fc.constantFrom(10 as const, 15 as const, 20 as const, 60 as const),
      (milliliters, minutes, set) => {
        const drops = dropsPerMinute(milliliters, minutes, set);
        expect(drops * minutes).toBeLessThanOrEqual(milliliters * set);
        expect((drops + 1) * minutes).toBeGreaterThan(milliliters * set);
      },
    ),
    { seed: 8, numRuns: 500 },
  );
});
