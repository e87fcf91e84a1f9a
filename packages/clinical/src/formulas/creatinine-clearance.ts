/**
 * Creatinine clearance in mL/min, not indexed to body surface, by both printed forms of one formula.
 *
 * Paper: Cockcroft and Gault 1976, Nephron 16:31, doi 10.1159/000180580 (the mg/dL form). The umol/L form with 1.23 and 1.04
 * is the one in UK drug-safety guidance (MHRA October 2019; constants from memory). Rounding of the constants makes the two
 * differ by -0.35 % in women and +0.18 % in men, so that they fall on opposite sides of 35 for some people: both must pass.
 *
 * Not for: unstable creatinine (acute kidney injury), amputation, pregnancy, extremes of muscle mass (standard, from
 * memory). Actual body weight goes in, as the product text has it (from memory).
 */
import { type Ratio, compareRatio, dividedBy, ratio, times } from '../exact/ratio.ts';
import type { Scaled } from '../exact/decimal.ts';

export type Sex = 'female' | 'male';

export type ClearanceInput = {
  readonly ageYears: number;
  readonly sex: Sex;
  readonly weightKg: Ratio;
  /** Above nought. */
  readonly creatinineUmolPerL: Ratio;
};

export type Clearance = {
  /** (140 - age) x kg x (1.04 F | 1.23 M) / umol/L */
  readonly byMicromoles: Ratio;
  /** (140 - age) x kg x (0.85 F) / (72 x mg/dL) */
  readonly byMilligrams: Ratio;
};

export const clearanceSources = {
  byMicromoles: 'Cockcroft and Gault 1976, Nephron 16:31; constants 1.23 and 1.04: MHRA October 2019 (from memory)',
  byMilligrams: 'Cockcroft and Gault 1976, Nephron 16:31',
} as const;

const PER_MICROMOLE: Readonly<Record<Sex, Ratio>> = { female: ratio(104, 100), male: ratio(123, 100) };
/** mg/dL = umol/L / 88.4, so that 72 x mg/dL = umol/L x 72 / 88.4: 88.4 / 72 is 221 / 180. */
const PER_MILLIGRAM: Readonly<Record<Sex, Ratio>> = { female: ratio(85 * 221, 100 * 180), male: ratio(221, 180) };

export function creatinineClearance({ ageYears, sex, weightKg, creatinineUmolPerL }: ClearanceInput): Clearance {
  const share = dividedBy(times(ratio(140 - ageYears, 1), weightKg), creatinineUmolPerL);
  return { byMicromoles: times(share, PER_MICROMOLE[sex]), byMilligrams: times(share, PER_MILLIGRAM[sex]) };
}

export const bothAtLeast = (clearance: Clearance, floor: Scaled): boolean =>
  compareRatio(clearance.byMicromoles, floor) >= 0 && compareRatio(clearance.byMilligrams, floor) >= 0;

export const eitherBelow = (clearance: Clearance, ceiling: Scaled): boolean => !bothAtLeast(clearance, ceiling);
