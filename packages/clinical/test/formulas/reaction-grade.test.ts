/**
 * Grades with their version. Fever: CTCAE 6.0 (read), 5.0 the same (from memory). Low calcium: bands read in 4.03, 5.0 from
 * memory. Edges: clinical fact sheet 2m, reference sheet 2.7.
 */
import { describe, expect, test } from 'vitest';
import { ctcaeVersions, feverGrade, gradeTexts, lowCalciumGrade, news2, ratioOf, scaled } from '@twelvemonth/clinical';

describe('fever', () => {
  test.each([
    [37.9, 0, 0],
    [38.0, 0, 1],
    [39.0, 0, 1],
    [39.1, 0, 2],
    [40.0, 0, 2],
    // Some transcriptions repeat the text of grade 2 here.
    [40.1, 0, 3],
    [40.1, 24, 3],
    [40.1, 25, 4],
    [40.0, 48, 2],
  ] as const)('%f degrees, %i h above 40: grade %i', (celsius, hours, grade) =>
    expect(feverGrade(celsius, hours, '6.0')).toEqual({ term: 'fever', grade, version: '6.0' }),
  );
  test.each([
    [37.9, 0, 0],
    [38.0, 1, 0],
    [39.0, 1, 1],
    [39.1, 2, 2],
  ])(
    '%f degrees is grade %i, and scores %i in NEWS2: the two are not one scale',
    (temperatureCelsius, grade, points) => {
      expect(feverGrade(temperatureCelsius, 0, '5.0')?.grade).toBe(grade);
      expect(
        news2({
          breathsPerMinute: 16,
          saturationPercent: 97,
          onOxygen: false,
          systolicMmHg: 130,
          pulsePerMinute: 72,
          consciousness: 'A',
          temperatureCelsius,
        }),
      ).toMatchObject({ parts: { temperatureCelsius: points } });
    },
  );
  test('a temperature finer than a tenth is no reading: no grade, never rounded', () => {
    expect(feverGrade(39.04, 0, '6.0')).toBeUndefined();
    expect(feverGrade(37.95, 0, '6.0')).toBeUndefined();
  });
});

describe('low calcium, lower limit of the laboratory 2.20', () => {
  test.each([
    ['2.20', 0],
    ['2.1999', 1],
    ['2.00', 1],
    ['1.9999', 2],
    ['1.99', 2],
    ['1.75', 2],
    ['1.7499', 3],
    ['1.74', 3],
    ['1.50', 3],
    ['1.49', 4],
  ] as const)('%s mmol/L: grade %i', (calcium, grade) =>
    expect(lowCalciumGrade(ratioOf(scaled(calcium)), scaled('2.20'), '5.0')).toEqual({
      term: 'low calcium',
      grade,
      version: '5.0',
    }),
  );
  test('a laboratory with another limit has another grade 1', () =>
    expect(lowCalciumGrade(ratioOf(scaled('2.15')), scaled('2.10'), '5.0').grade).toBe(0));
});

test('a term graded by looking has a text for every grade it has; flu-like symptoms end at 3', () => {
  expect(ctcaeVersions).toEqual(['5.0', '6.0']);
  expect(Object.fromEntries(Object.entries(gradeTexts).map(([term, texts]) => [term, texts.length]))).toEqual({
    fever: 4,
    'flu-like symptoms': 3,
    'infusion-related reaction': 4,
    'infusion site extravasation': 4,
  });
});
