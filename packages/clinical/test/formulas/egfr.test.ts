/**
 * eGFR, shown only. Equations: Levey 2009, Ann Intern Med 150:604 (without race factor) and Inker 2021, NEJM 385:1737 (read).
 * EG rows: clinical fact sheet 2b-ex (computed); R rows: reference sheet 2.10 (checked in R and Python).
 */
import { describe, expect, test } from 'vitest';
import {
  bodySurfaceDuBois,
  bodySurfaceMosteller,
  bothAtLeast,
  creatinineClearance,
  deindexed,
  egfr,
  ratioOf,
  scaled,
} from '@twelvemonth/clinical';

describe('eGFR in mL/min/1.73 m2', () => {
  test.each([
    ['EG1', 'male', 50, 1.0, 87.37, 91.69],
    ['EG2', 'female', 50, 1.0, 65.64, 68.63],
    ['EG3', 'female', 75, 0.6, 89.16, 93.55],
    ['EG4', 'female', 70, 0.7, 87.78, 92.98],
    ['EG5', 'female', 80, 1.3, 38.71, 41.57],
    ['EG6', 'male', 65, 0.9, 89.31, 94.78],
    ['EG7', 'male', 65, 0.8, 93.74, 98.21],
    ['EG8', 'male', 72, 1.5, 45.85, 49.16],
    ['EG9', 'female', 78, 92 / 88.4, 51.38, 54.97],
    ['EG10', 'female', 84, 88 / 88.4, 51.98, 55.86],
    ['EG11', 'male', 70, 110 / 88.4, 58.29, 62.28],
    ['R1', 'female', 72, 88 / 88.4, 56.548, 60.184],
    ['R2', 'male', 79, 115 / 88.4, 51.852, 55.835],
    ['R3', 'female', 84, 81 / 88.4, 57.455, 61.697],
    ['R4', 'female', 50, 62 / 88.4, 100.789, 105.053],
  ] as const)('%s: %s %i y, %d mg/dL: %d (2009), %d (2021)', (_row, sex, age, mgPerDl, in2009, in2021) => {
    expect(egfr(2009, sex, age, mgPerDl)).toBeCloseTo(in2009, 2);
    expect(egfr(2021, sex, age, mgPerDl)).toBeCloseTo(in2021, 2);
  });

  // Fact sheet 2b, note: the paper's table prints 144 for women; 141 x 1.018 is 143.54. Ours is the latter.
  test('the equation with 141 and 1.018, not the table form with 144 (EG2: 65.64, not 65.85)', () => {
    expect(egfr(2009, 'female', 50, 1)).toBeCloseTo(65.64, 2);
    expect((egfr(2009, 'female', 50, 1) * 144) / (141 * 1.018)).toBeCloseTo(65.85, 2);
  });

  test('the bend of the curve is at 0.7 mg/dL for women and 0.9 for men: there the powers are of one', () => {
    expect(egfr(2021, 'female', 70, 0.7)).toBeCloseTo(142 * 0.9938 ** 70 * 1.012, 9);
    expect(egfr(2021, 'male', 65, 0.9)).toBeCloseTo(142 * 0.9938 ** 65, 9);
  });
});

describe('the same for the person’s own surface (KDIGO 2011)', () => {
  // Fact sheet 2c-ex, BS1-BS6 (computed): Mosteller 1987, Du Bois 1916 (from memory).
  test.each([
    ['BS1', 160, 58, 1.6055, 1.5989, 52, 48.26, 48.06],
    ['BS2', 152, 45, 1.3784, 1.383, 40, 31.87, 31.98],
    ['BS3', 178, 82, 2.0136, 2.0012, 60, 69.83, 69.41],
    ['BS4', 155, 90, 1.9685, 1.8833, 33, 37.55, 35.92],
    ['BS5', 180, 80, 2.0, 1.9964, 60, 69.36, 69.24],
    ['BS6', 170, 70, 1.8181, 1.8097, 60, 63.06, 62.76],
  ])('%s: %i cm, %i kg', (_row, height, weight, mosteller, duBois, indexed, byMosteller, byDuBois) => {
    expect(bodySurfaceMosteller(height, weight)).toBeCloseTo(mosteller, 4);
    expect(bodySurfaceDuBois(height, weight)).toBeCloseTo(duBois, 4);
    expect(deindexed(indexed, bodySurfaceMosteller(height, weight))).toBeCloseTo(byMosteller, 2);
    expect(deindexed(indexed, bodySurfaceDuBois(height, weight))).toBeCloseTo(byDuBois, 2);
  });
  test('a standard body keeps its number', () => expect(deindexed(57, 1.73)).toBeCloseTo(57, 12));
});

// Fact sheet 2c-ex, safety example, and rule 2 of its fifteen: why an eGFR never stands in for the clearance.
describe('a woman of 84, 152 cm, 45 kg, creatinine 88 umol/L', () => {
  const surface = bodySurfaceMosteller(152, 45);
  test('has an eGFR of 55.9 (2021) or 52.0 (2009), de-indexed 44.5 or 41.4', () => {
    expect(egfr(2021, 'female', 84, 88 / 88.4)).toBeCloseTo(55.9, 1);
    expect(egfr(2009, 'female', 84, 88 / 88.4)).toBeCloseTo(52.0, 1);
    expect(deindexed(egfr(2021, 'female', 84, 88 / 88.4), surface)).toBeCloseTo(44.5, 1);
    expect(deindexed(egfr(2009, 'female', 84, 88 / 88.4), surface)).toBeCloseTo(41.4, 1);
  });
  test('and a clearance below 35: contraindicated', () => {
    const clearance = creatinineClearance({
      ageYears: 84,
      sex: 'female',
      weightKg: ratioOf(scaled('45')),
      creatinineUmolPerL: ratioOf(scaled('88')),
    });
    expect(bothAtLeast(clearance, scaled('35'))).toBe(false);
  });
});
