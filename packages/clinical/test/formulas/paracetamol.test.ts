/** Paracetamol by weight: one published UK policy (NHS Telford 2018, read); fact sheet 2n. */
import { describe, expect, test } from 'vitest';
import { fifteenPerKilogram, paracetamolFor, ratioOf, scaled } from '@twelvemonth/clinical';

const exactly = (text: string) => ratioOf(scaled(text));
const at = (weight: string, more: { liverRisk?: boolean; egfr?: number } = {}) =>
  paracetamolFor({ weightKg: exactly(weight), liverRisk: false, egfr: 80, ...more });

describe('the row for a weight', () => {
  test.each([
    ['33', 500, 500, 4, 2],
    ['40', 500, 500, 4, 2],
    // Between "up to 40" and "41 to 49" the lower row holds.
    ['40.9999', 500, 500, 4, 2],
    ['41', 500, 1000, 3, 3],
    ['49.9999', 500, 1000, 3, 3],
    ['50', 500, 1000, 4, 4],
    ['120', 500, 1000, 4, 4],
  ])('%s kg: %i to %i mg, %i times, at most %i g a day', (weight, least, most, timesADay, mostGramsADay) =>
    expect(at(weight)).toMatchObject({ doseMilligrams: [least, most], timesADay, mostGramsADay }),
  );
  test('the doses of a row never add up to more than it allows a day', () => {
    for (const weight of ['33', '41', '50']) {
      const row = at(weight);
      expect(row && row.doseMilligrams[1] * row.timesADay).toBeLessThanOrEqual((row?.mostGramsADay ?? 0) * 1000);
    }
  });
  test('no figure for an unknown weight, below the table, or with liver risk: a prescriber is asked', () => {
    expect(paracetamolFor({ weightKg: undefined, liverRisk: false, egfr: 80 })).toBeUndefined();
    expect(at('32.9999')).toBeUndefined();
    expect(at('70', { liverRisk: true })).toBeUndefined();
  });
  test('an eGFR below 30, or none known, wants six hours between doses', () => {
    expect(at('60')?.leastHoursBetween).toBe(4);
    expect(at('60', { egfr: 30 })?.leastHoursBetween).toBe(4);
    expect(at('60', { egfr: 29.9 })?.leastHoursBetween).toBe(6);
    expect(paracetamolFor({ weightKg: exactly('60'), liverRisk: false, egfr: undefined })?.leastHoursBetween).toBe(6);
  });
  test("a unit's own table goes before it", () =>
    expect(
      paracetamolFor({ weightKg: exactly('60'), liverRisk: false, egfr: 80 }, [
        { fromKg: scaled('50'), belowKg: undefined, doseMilligrams: [1000, 1000], timesADay: 3, mostGramsADay: 3 },
      ])?.mostGramsADay,
    ).toBe(3));
});

// The intravenous licence's rule, often borrowed for tablets (from memory): 15 mg/kg a dose.
test.each([
  ['33', 495],
  ['40', 600],
  ['45', 675],
  ['49', 735],
])('15 mg/kg at %s kg is %i mg', (weight, milligrams) => expect(fifteenPerKilogram(exactly(weight))).toBe(milligrams));
