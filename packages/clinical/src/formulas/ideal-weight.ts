/**
 * Ideal and adjusted body weight in kilograms.
 *
 * Ideal: Devine 1974, Drug Intell Clin Pharm 8:650 (from memory): 50 kg (men) or 45.5 kg (women) + 2.3 kg for each inch over
 * 60. Not validated below 152.4 cm: not used there. Uses the tallest adult height, because a bent spine shrinks today's.
 * Adjusted: ideal + share x (actual - ideal); Winter 2012, Pharmacotherapy 32:604 (from memory) with a share of 0.4.
 *
 * Shown beside the actual weight and used to ask a prescriber where it would change the answer; never to pass anyone.
 */
import type { Scaled } from '../exact/decimal.ts';
import { type Ratio, compareRatios, minus, plus, ratio, ratioOf, times } from '../exact/ratio.ts';
import type { Sex } from './creatinine-clearance.ts';

export const idealWeightSources = {
  ideal: 'Devine 1974, Drug Intell Clin Pharm 8:650 (from memory)',
  adjusted: 'Winter 2012, Pharmacotherapy 32:604 (from memory)',
} as const;

/** 60 inches: the shortest height the formula was made for. */
const SHORTEST_CM = ratio(1524, 10);
// 2.3 kg per inch over 60 is 115/127 kg per cm, less 138 kg.
const KG_PER_CM = ratio(115, 127);
const LESS_KG: Readonly<Record<Sex, Ratio>> = { male: ratio(88, 1), female: ratio(925, 10) };

/** Undefined below 152.4 cm. */
export function idealWeightKg(sex: Sex, heightCm: Ratio): Ratio | undefined {
  if (compareRatios(heightCm, SHORTEST_CM) < 0) return undefined;
  return minus(times(heightCm, KG_PER_CM), LESS_KG[sex]);
}

export const adjustedWeightKg = (actualKg: Ratio, idealKg: Ratio, share: Scaled): Ratio =>
  plus(idealKg, times(ratioOf(share), minus(actualKg, idealKg)));

/** Whether the actual weight is at least so many per cent of the ideal one. */
export const isAtLeastPercentOf = (actualKg: Ratio, idealKg: Ratio, percent: Scaled): boolean =>
  compareRatios(times(actualKg, ratio(100, 1)), times(ratioOf(percent), idealKg)) >= 0;
