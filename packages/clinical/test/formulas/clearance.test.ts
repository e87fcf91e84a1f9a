/**
 * The clearance against worked values. Formula: Cockcroft and Gault 1976, Nephron 16:31 (read); umol/L constants: MHRA October
 * 2019 (from memory). CG and W numbers are rows of the clinical fact sheet (2a-ex, 2a-ex2, computed); R rows were checked in R
 * and Python (reference sheet 2.10).
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  adjustedWeightKg,
  bothAtLeast,
  compareRatio,
  creatinineClearance,
  creatinineUmolPerL,
  eitherBelow,
  idealWeightKg,
  minus,
  quantity,
  ratio,
  ratioAsNumber,
  ratioOf,
  ratioText,
  scaled,
  whatWouldClear,
} from '@twelvemonth/clinical';

const kg = (text: string) => ratioOf(scaled(text));
const floor = scaled('35');
const clearance = (
  sex: 'F' | 'M',
  ageYears: number,
  weight: string,
  creatinine: string,
  unit: 'umol/L' | 'mg/dL' = 'umol/L',
) => {
  const creatinineUmol = creatinineUmolPerL(quantity(creatinine, unit));
  if (creatinineUmol === undefined) throw new Error('not a creatinine');
  return creatinineClearance({
    ageYears,
    sex: sex === 'F' ? 'female' : 'male',
    weightKg: kg(weight),
    creatinineUmolPerL: creatinineUmol,
  });
};

describe('creatinine clearance', () => {
  test.each([
    ['CG1', 'F', 78, '58', '92', '40.650', '40.792', true],
    ['CG2', 'F', 84, '45', '88', '29.782', '29.885', false],
    ['CG3', 'M', 70, '82', '110', '64.184', '64.068', true],
    ['CG4', 'M', 65, '70', '100', '64.575', '64.458', true],
    ['CG5', 'F', 80, '50', '89', '35.056', '35.178', true],
    ['CG6', 'F', 80, '50', '90', '34.667', '34.787', false],
    ['CG7', 'F', 70, '50', '104', '35.000', '35.122', true],
    ['CG8', 'F', 90, '70', '104', '35.000', '35.122', true],
    ['CG9', 'F', 70, '46', '96', '34.883', '35.004', false],
    ['CG10', 'M', 70, '48', '118', '35.024', '34.960', false],
  ] as const)(
    '%s: %s %i y, %s kg, %s umol/L: %s and %s, both pass: %s',
    (_row, sex, age, weight, creatinine, micro, milli, passes) => {
      const found = clearance(sex, age, weight, creatinine);
      expect([ratioText(found.byMicromoles, 3), ratioText(found.byMilligrams, 3)]).toEqual([micro, milli]);
      expect(bothAtLeast(found, floor)).toBe(passes);
    },
  );

  test('35 exactly passes: (140 - 70) x 50 x 1.04 / 104 is 35, not less (CG7)', () => {
    expect(compareRatio(clearance('F', 70, '50', '104').byMicromoles, floor)).toBe(0);
  });

  // clinical.md 2a-ex, mg/dL direct.
  test.each([
    ['M', 60, '80', '1.2', '74.074'],
    ['F', 75, '60', '1.0', '46.042'],
    ['F', 82, '48', '0.9', '36.519'],
  ] as const)('%s %i y, %s kg, %s mg/dL: %s by the mg/dL form', (sex, age, weight, creatinine, milli) => {
    expect(ratioText(clearance(sex, age, weight, creatinine, 'mg/dL').byMilligrams, 3)).toBe(milli);
  });

  // references.md 2.10 (checked there in R and Python).
  test.each([
    ['F', 80, '56', '100', '34.944', '35.066'],
    ['F', 72, '61.5', '88', '49.424', undefined],
    ['M', 79, '82', '115', '53.500', undefined],
    ['F', 90, '43', '62', '36.065', undefined],
    ['F', 67, '104', '78', '101.227', undefined],
  ] as const)('%s %i y, %s kg, %s umol/L: %s', (sex, age, weight, creatinine, micro, milli) => {
    const found = clearance(sex, age, weight, creatinine);
    expect(ratioText(found.byMicromoles, 3)).toBe(micro);
    // The sheet put in 1.1312 mg/dL, rounded; the exact 100 / 88.4 gives 35.065.
    const printed = milli === undefined ? ratioAsNumber(found.byMilligrams) : Number(milli);
    expect(Math.abs(ratioAsNumber(found.byMilligrams) - printed)).toBeLessThan(0.001);
  });

  // clinical.md 2a-ex2 and references.md 2.10: which weight changes the answer.
  test.each([
    [79, '155', '95', '115', '52.41', '36.80', '26.40'],
    [67, '158', '104', '78', '101.23', '70.02', '49.22'],
  ])(
    'F %i y, %s cm, %s kg, %s umol/L: actual %s, adjusted %s, ideal %s',
    (age, cm, weight, creatinine, actual, adjusted, ideal) => {
      const idealKg = idealWeightKg('female', kg(cm));
      if (idealKg === undefined) throw new Error('too short');
      const by = (weightInKg: typeof idealKg) =>
        ratioText(
          creatinineClearance({
            ageYears: age,
            sex: 'female',
            weightKg: weightInKg,
            creatinineUmolPerL: kg(creatinine),
          }).byMicromoles,
          2,
        );
      expect([by(kg(weight)), by(adjustedWeightKg(kg(weight), idealKg, scaled('0.4'))), by(idealKg)]).toEqual([
        actual,
        adjusted,
        ideal,
      ]);
    },
  );

  // docs/readiness.md, worked cases 5 and 6.
  test('the worked cases straddle as printed', () => {
    expect(ratioText(clearance('F', 84, '48.5', '80').byMicromoles, 2)).toBe('35.31');
    expect(ratioText(clearance('F', 84, '48.5', '80').byMilligrams, 2)).toBe('35.43');
    expect(ratioText(clearance('F', 85, '48.5', '80').byMicromoles, 2)).toBe('34.68');
    expect(ratioText(clearance('F', 85, '52', '85').byMicromoles, 2)).toBe('34.99');
    expect(ratioText(clearance('F', 85, '52', '85').byMilligrams, 2)).toBe('35.11');
  });
});

describe('what would clear it', () => {
  const anyone = fc.record({
    ageYears: fc.integer({ min: 60, max: 99 }),
    sex: fc.constantFrom('female' as const, 'male' as const),
    weightKg: fc.integer({ min: 300, max: 900 }).map((n) => ratio(BigInt(n), 10n)),
    creatinineUmolPerL: fc.integer({ min: 60, max: 200 }).map((n) => ratio(BigInt(n), 1n)),
  });
  test('the weight said passes by both forms and a tenth of a kilogram less does not', () => {
    fc.assert(
      fc.property(anyone, (person) => {
        const { weightKg: enough } = whatWouldClear(person, floor);
        if (enough === undefined) return;
        expect(bothAtLeast(creatinineClearance({ ...person, weightKg: enough }), floor)).toBe(true);
        expect(bothAtLeast(creatinineClearance({ ...person, weightKg: minus(enough, ratio(1, 10)) }), floor)).toBe(
          false,
        );
      }),
      { seed: 3, numRuns: 300 },
    );
  });
  test('the creatinine said passes by both forms and one umol/L more does not', () => {
    fc.assert(
      fc.property(anyone, (person) => {
        const { creatinineUmolPerL: most } = whatWouldClear(person, floor);
        if (most === undefined) return;
        const by = (umol: number) =>
          bothAtLeast(creatinineClearance({ ...person, creatinineUmolPerL: ratio(BigInt(umol), 1n) }), floor);
        expect([by(most), by(most + 1)]).toEqual([true, false]);
      }),
      { seed: 4, numRuns: 300 },
    );
  });
});

describe('one step of one input at the limit', () => {
  // CG5/CG6 and CG9/CG10: a step of 1 umol/L, and the two forms on opposite sides of 35.
  test('CG5 and CG6: 89 umol/L passes, 90 does not', () => {
    expect(bothAtLeast(clearance('F', 80, '50', '89'), floor)).toBe(true);
    expect(bothAtLeast(clearance('F', 80, '50', '90'), floor)).toBe(false);
  });
  test('CG9 by the umol/L form alone would stop, CG10 by the mg/dL form alone: either stops', () => {
    const nine = clearance('F', 70, '46', '96');
    const ten = clearance('M', 70, '48', '118');
    expect([compareRatio(nine.byMicromoles, floor), compareRatio(nine.byMilligrams, floor)]).toEqual([-1, 1]);
    expect([compareRatio(ten.byMicromoles, floor), compareRatio(ten.byMilligrams, floor)]).toEqual([1, -1]);
    expect([eitherBelow(nine, floor), eitherBelow(ten, floor)]).toEqual([true, true]);
  });
  // Reference sheet 0.2: born 1948-02-29, 46 kg, 86 umol/L; 77 years gives 35.05, 78 years 34.49.
  test('a year of age: 77 passes, 78 does not', () => {
    expect(ratioText(clearance('F', 77, '46', '86').byMicromoles, 2)).toBe('35.05');
    expect(ratioText(clearance('F', 78, '46', '86').byMicromoles, 2)).toBe('34.49');
  });
  test('what is compared is not what is printed: 34.996 prints 35.00 and does not pass', () => {
    const close = creatinineClearance({
      ageYears: 70,
      sex: 'female',
      weightKg: kg('49.995'),
      creatinineUmolPerL: kg('104'),
    });
    expect(ratioText(close.byMicromoles, 2)).toBe('35.00');
    expect(bothAtLeast(close, floor)).toBe(false);
  });
  test('35 exactly by the mg/dL form passes too: 70 x 90 / (72 x 2.5) is 35 at 221 umol/L', () => {
    const at = clearance('M', 70, '90', '221');
    expect(compareRatio(at.byMilligrams, floor)).toBe(0);
    expect(bothAtLeast(at, floor)).toBe(true);
  });
  // Worked case 6 of docs/readiness.md: 55 x kg x 1.04 / 85 reaches 35 from 52.01 kg, and 55 x 52 x 1.04 / umol down to 84.98.
  test('a woman of 85 with 52 kg and 85 umol/L would pass from 52.1 kg, or up to 84 umol/L', () => {
    const found = whatWouldClear(
      { ageYears: 85, sex: 'female', weightKg: kg('52'), creatinineUmolPerL: kg('85') },
      floor,
    );
    expect(found.weightKg && ratioText(found.weightKg, 1)).toBe('52.1');
    expect(found.creatinineUmolPerL).toBe(84);
  });
  test('nobody passes whatever they weigh, or whatever the creatinine, where no number would do', () => {
    const old = { ageYears: 139, sex: 'female', weightKg: kg('1'), creatinineUmolPerL: kg('400') } as const;
    expect(whatWouldClear(old, floor)).toEqual({ weightKg: undefined, creatinineUmolPerL: undefined });
  });
});
