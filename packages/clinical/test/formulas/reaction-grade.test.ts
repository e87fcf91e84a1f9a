/**
 * Grades with their version. Fever: CTCAE 6.0 (read), 5.0 the same (from memory). Low calcium: bands in mmol/L read in 4.03, 5.0 from
 * memory. Edges: clinical fact sheet 2m, reference sheet 2.7.
 */
import { describe, expect, test } from 'vitest';
import {
  calciumMmolPerL,
  creatinineIncreasedGrade,
  ctcaeVersions,
  feverGrade,
  gradedTerms,
  gradesOf,
  kindNamed,
  lowCalciumGrade,
  news2,
  ratioOf,
  ratioText,
  scaled,
} from '@twelvemonth/clinical';

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

const low = (adjusted: string, lowerLimit: string, unit: 'mmol/L' | 'mg/dL' = 'mmol/L') =>
  lowCalciumGrade({ adjusted: ratioOf(scaled(adjusted)), lowerLimit: scaled(lowerLimit), unit }, '5.0');

describe('low calcium, lower limit of the laboratory 2.20 mmol/L', () => {
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
    expect(low(calcium, '2.20')).toEqual({ term: 'low calcium', grade, version: '5.0' }),
  );
  test('a laboratory with another limit has another grade 1', () => expect(low('2.15', '2.10').grade).toBe(0));
});

// The bands in mg/dL of 5.0: 8.0, 7.0, 6.0 (from memory).
describe('low calcium, lower limit of the laboratory 8.6 mg/dL: compared in the unit reported', () => {
  test.each([
    ['8.6', 0],
    ['8.5', 1],
    ['8.0', 1],
    ['7.9', 2],
    ['7.0', 2],
    ['6.9', 3],
    ['6.0', 3],
    ['5.9', 4],
  ] as const)('%s mg/dL: grade %i', (calcium, grade) => expect(low(calcium, '8.6', 'mg/dL').grade).toBe(grade));
  test('8.0 mg/dL is 1.996 mmol/L, which would be grade 2: it is not converted', () => {
    const converted = calciumMmolPerL({ comparator: '', value: '8.0', unit: 'mg/dL' });
    expect(converted === undefined ? '' : ratioText(converted, 3)).toBe('1.996');
    expect(low('1.996', '2.20').grade).toBe(2);
    expect(low('8.0', '8.6', 'mg/dL').grade).toBe(1);
  });
});

/** Reference sheet 2.7 (5.0, from memory): above the limit to 1.5 times it; 1.5 to 3 times limit or baseline; above 3; above 6 times the limit. */
describe('creatinine increased, upper limit 80 umol/L, own earlier value 60', () => {
  const umol = (value: string) => ratioOf(scaled(value));
  const risen = (value: string, baseline: string | undefined, limit: string | undefined) =>
    creatinineIncreasedGrade(
      {
        umolPerL: umol(value),
        baseline: baseline === undefined ? undefined : umol(baseline),
        upperLimit: limit === undefined ? undefined : umol(limit),
      },
      '5.0',
    );
  test.each([
    ['80', 0],
    ['80.1', 1],
    ['90', 1],
    // 1.5 x 60 = 90, 1.5 x 80 = 120: the baseline is reached first.
    ['90.1', 2],
    ['120.1', 2],
    ['180', 2],
    // 3 x 60 = 180.
    ['180.1', 3],
    ['480', 3],
    // 6 x 80 = 480.
    ['480.1', 4],
  ] as const)('%s umol/L: grade %i', (value, grade) =>
    expect(risen(value, '60', '80')).toEqual({ term: 'creatinine increased', grade, version: '5.0', atLeast: false }),
  );
  test('a high baseline: the limit alone makes the grade', () => {
    expect(risen('120', '110', '80')?.grade).toBe(1);
    expect(risen('120.1', '110', '80')?.grade).toBe(2);
    expect(risen('240.1', '110', '80')?.grade).toBe(3);
  });
  test('with one of the two missing it is at least that grade, and nothing is said of less than 2', () => {
    expect(risen('100', '60', undefined)).toMatchObject({ grade: 2, atLeast: true });
    expect(risen('190', '60', undefined)).toMatchObject({ grade: 3, atLeast: true });
    expect(risen('130', undefined, '80')).toMatchObject({ grade: 2, atLeast: true });
    expect(risen('481', undefined, '80')).toMatchObject({ grade: 4, atLeast: false });
    expect(risen('85', undefined, '80')).toBeUndefined();
    expect(risen('85', '60', undefined)).toBeUndefined();
    expect(risen('500', undefined, undefined)).toBeUndefined();
  });
});

/** Reference sheet 2.7: which grades a term has (5.0, from memory); anaphylaxis "starts at 3". Grade 5 is death everywhere. */
test('a term graded by looking has a text for every grade it has', () => {
  expect(ctcaeVersions).toEqual(['5.0', '6.0']);
  expect(Object.fromEntries(gradedTerms.map((term) => [term, gradesOf(term).map(({ grade }) => grade)]))).toEqual({
    fever: [1, 2, 3, 4],
    'flu-like symptoms': [1, 2, 3],
    'infusion-related reaction': [1, 2, 3, 4],
    anaphylaxis: [3, 4],
    'atrial fibrillation': [1, 2, 3, 4],
    'infusion site extravasation': [1, 2, 3, 4],
    'low calcium': [1, 2, 3, 4],
    'creatinine increased': [1, 2, 3, 4],
    'acute kidney injury': [3, 4],
    uveitis: [1, 2, 3, 4],
    'osteonecrosis of the jaw': [1, 2, 3, 4],
  });
});

test('a grade a term does not have is refused, and the one it begins with is not', () => {
  const written = (term: string, grade: number): boolean =>
    kindNamed('reaction').body.safeParse({ what: 'x', severity: 'severe', term, grade, gradeVersion: '5.0' }).success;
  expect([1, 2, 3, 4].map((grade) => written('anaphylaxis', grade))).toEqual([false, false, true, true]);
  expect([2, 3].map((grade) => written('acute kidney injury', grade))).toEqual([false, true]);
  expect([1, 2].map((grade) => written('uveitis', grade))).toEqual([true, true]);
});
