/** Paracetamol by weight: the rows of the UK starter are one published UK policy (NHS Telford 2018, read); fact sheet 2n. */
import { describe, expect, test } from 'vitest';
import {
  paracetamolFor,
  paracetamolRowSchema,
  paracetamolSays,
  ratioOf,
  readSheet,
  scaled,
  starterProtocols,
  teachingSheet,
} from '@twelvemonth/clinical';

const rows = teachingSheet.paracetamol;
const exactly = (text: string) => ratioOf(scaled(text));
const at = (weight: string, more: { liverRisk?: boolean; egfr?: number } = {}) =>
  paracetamolFor(rows, { weightKg: exactly(weight), liverRisk: false, egfr: 80, ...more });

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
    expect(at(weight)?.row).toMatchObject({ leastMilligrams: least, mostMilligrams: most, timesADay, mostGramsADay }),
  );
  test('no figure for an unknown weight, below the table, with liver risk, or without a table: a prescriber is asked', () => {
    expect(paracetamolFor(rows, { weightKg: undefined, liverRisk: false, egfr: 80 })).toBeUndefined();
    expect(at('32.9999')).toBeUndefined();
    expect(at('70', { liverRisk: true })).toBeUndefined();
    expect(paracetamolFor([], { weightKg: exactly('70'), liverRisk: false, egfr: 80 })).toBeUndefined();
  });
  test('an eGFR below 30, or none known, wants six hours between doses', () => {
    expect(at('60')?.leastHoursBetween).toBe(4);
    expect(at('60', { egfr: 30 })?.leastHoursBetween).toBe(4);
    expect(at('60', { egfr: 29.9 })?.leastHoursBetween).toBe(6);
    expect(
      paracetamolFor(rows, { weightKg: exactly('60'), liverRisk: false, egfr: undefined })?.leastHoursBetween,
    ).toBe(6);
  });
});

describe('a row of a rule sheet', () => {
  const [row] = rows;
  test.each([
    ['mostMilligrams', { leastMilligrams: 1000, mostMilligrams: 500 }],
    ['timesADay', { mostMilligrams: 1000, leastMilligrams: 1000, timesADay: 4, mostGramsADay: 3 }],
    // 4 g a day is the most of any label (product texts, from memory).
    ['mostGramsADay', { mostGramsADay: 5 }],
    ['belowKg', { fromKg: '50', belowKg: '41' }],
    ['source', { source: '' }],
  ])('is refused at %s: more than its own day, upside down, or without a source', (field, wrong) => {
    const read = paracetamolRowSchema.safeParse({ ...row, ...wrong });
    expect(read.error?.issues.map(({ path }) => path.join('.'))).toContain(field);
  });
  test('says itself in one line', () =>
    expect(rows.map(paracetamolSays)[1]).toBe(
      '41 kg to below 50 kg: 500 to 1000 mg, 3 times a day, 3 g in 24 hours at most, 4 hours between, 6 with an eGFR below 30 or none known',
    ));
});

test('only the starter whose country the policy is of has rows, each with its source; a sheet from before has none', () => {
  expect(starterProtocols.filter(({ paracetamol }) => paracetamol.length > 0).map(({ title }) => title)).toEqual([
    expect.stringMatching(/^UK/),
  ]);
  const { paracetamol: _, ...older } = teachingSheet;
  const read = readSheet(older);
  expect('sheet' in read && [read.sheet.paracetamol, read.added]).toEqual([[], []]);
});
