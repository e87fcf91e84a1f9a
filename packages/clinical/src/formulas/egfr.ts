/**
 * Estimated glomerular filtration rate in mL/min/1.73 m2, by the two equations laboratories use. Shown beside the
 * clearance, because people will have it in front of them; it never passes and never stops anyone: a small old woman with an
 * eGFR of 56 can have a clearance of 30. Floats: no threshold ever meets them.
 *
 * 2009: Levey 2009, Ann Intern Med 150:604, without the race factor (UK practice, from memory).
 * 2021: Inker 2021, NEJM 385:1737.
 *
 * Not for: acute change, pregnancy, under 18, unusual muscle mass.
 */
import type { Sex } from './creatinine-clearance.ts';

export const egfrSources = {
  2009: 'CKD-EPI 2009: Levey, Ann Intern Med 150:604, without race factor',
  2021: 'CKD-EPI 2021: Inker, NEJM 385:1737',
} as const;

type Constants = {
  readonly factor: number;
  readonly above: number;
  readonly yearly: number;
  readonly alpha: Readonly<Record<Sex, number>>;
  readonly female: number;
};
const constants: Readonly<Record<2009 | 2021, Constants>> = {
  2009: { factor: 141, above: -1.209, yearly: 0.993, alpha: { female: -0.329, male: -0.411 }, female: 1.018 },
  2021: { factor: 142, above: -1.2, yearly: 0.9938, alpha: { female: -0.241, male: -0.302 }, female: 1.012 },
};
const kappa: Readonly<Record<Sex, number>> = { female: 0.7, male: 0.9 };

export function egfr(equation: 2009 | 2021, sex: Sex, ageYears: number, creatinineMgPerDl: number): number {
  const { factor, above, yearly, alpha, female } = constants[equation];
  const share = creatinineMgPerDl / kappa[sex];
  return (
    factor *
    Math.min(share, 1) ** alpha[sex] *
    Math.max(share, 1) ** above *
    yearly ** ageYears *
    (sex === 'female' ? female : 1)
  );
}
