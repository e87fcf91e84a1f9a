/**
 * Severity of a reaction in the common terminology criteria for adverse events (CTCAE). A grade means nothing without its
 * version, so the two are told together: version 6.0 was published on 22 July 2025; its fever rows and those of 5.0 agree
 * (6.0 read, 5.0 from memory); the bands of low calcium in mmol/L were read in 4.03 and are the same in 5.0 by memory; those in mg/dL
 * and of creatinine are 5.0 from memory.
 *
 * Only what can be told from numbers is worked out; for the rest the person who sees the patient chooses among the texts.
 * Grade 5 is death. A grade describes what happened; it is no advice on what to do, and no early-warning score.
 */
import { type Scaled, scaled } from '../exact/decimal.ts';
import { type Ratio, compareRatio, compareRatios, ratio, times } from '../exact/ratio.ts';
import { tenthsOfDegree } from './temperature.ts';

export const ctcaeVersions = ['5.0', '6.0'] as const;
export type CtcaeVersion = (typeof ctcaeVersions)[number];
/** 0: below grade 1. */
export type Grade = 0 | 1 | 2 | 3 | 4;
export type Graded = { readonly term: string; readonly grade: Grade; readonly version: CtcaeVersion };

/**
 * Fever: 38.0-39.0 degrees grade 1, above 39.0 to 40.0 grade 2, above 40.0 grade 3, and 4 when it lasts more than 24 hours.
 * Undefined for a temperature finer than a tenth.
 */
export function feverGrade(celsius: number, hoursAbove40: number, version: CtcaeVersion): Graded | undefined {
  const tenths = tenthsOfDegree(celsius);
  if (tenths === undefined) return undefined;
  const grade = tenths < 380 ? 0 : tenths <= 390 ? 1 : tenths <= 400 ? 2 : hoursAbove40 > 24 ? 4 : 3;
  return { term: 'fever', grade, version };
}

/** The bands as printed for each unit: 8.0 mg/dL is 1.996 mmol/L, and yet grade 1. So a value is compared in the unit reported. */
const calciumBands = {
  'mmol/L': [
    [scaled('2.0'), 1],
    [scaled('1.75'), 2],
    [scaled('1.5'), 3],
  ],
  'mg/dL': [
    [scaled('8.0'), 1],
    [scaled('7.0'), 2],
    [scaled('6.0'), 3],
  ],
} as const satisfies Readonly<Record<string, readonly (readonly [from: Scaled, grade: Grade])[]>>;

export type ReportedCalcium = {
  readonly adjusted: Ratio;
  /** The laboratory's own, in the same unit. */
  readonly lowerLimit: Scaled;
  readonly unit: keyof typeof calciumBands;
};

/** Low adjusted calcium, below the laboratory's own lower limit: to 2.0, to 1.75, to 1.5 mmol/L, below; the signs are a person's to grade. */
export function lowCalciumGrade({ adjusted, lowerLimit, unit }: ReportedCalcium, version: CtcaeVersion): Graded {
  const grade =
    compareRatio(adjusted, lowerLimit) >= 0
      ? 0
      : (calciumBands[unit].find(([from]) => compareRatio(adjusted, from) >= 0)?.[1] ?? 4);
  return { term: 'low calcium', grade, version };
}

const HALF_AGAIN = ratio(3, 2);
const THREE = ratio(3, 1);
const SIX = ratio(6, 1);
const isMoreThan = (value: Ratio, factor: Ratio, of: Ratio | undefined): boolean =>
  of !== undefined && compareRatios(value, times(factor, of)) > 0;

export type RisenCreatinine = {
  readonly umolPerL: Ratio;
  /** The person's own before; undefined: none is known. */
  readonly baseline: Ratio | undefined;
  /** The laboratory's upper limit; undefined: it was not printed. */
  readonly upperLimit: Ratio | undefined;
};

/**
 * Creatinine increased: above the upper limit, to 1.5 times it, grade 1; above 1.5 times the baseline or the limit grade 2; above 3
 * times grade 3; above 6 times the limit grade 4. Where baseline or limit is missing the grade may be higher: then it is at least
 * that, and undefined where not even grade 2 is certain.
 */
export function creatinineIncreasedGrade(
  { umolPerL, baseline, upperLimit }: RisenCreatinine,
  version: CtcaeVersion,
): (Graded & { readonly atLeast: boolean }) | undefined {
  const above = (factor: Ratio): boolean =>
    isMoreThan(umolPerL, factor, baseline) || isMoreThan(umolPerL, factor, upperLimit);
  const grade: Grade = isMoreThan(umolPerL, SIX, upperLimit)
    ? 4
    : above(THREE)
      ? 3
      : above(HALF_AGAIN)
        ? 2
        : isMoreThan(umolPerL, ratio(1, 1), upperLimit)
          ? 1
          : 0;
  const known = grade === 4 || (baseline !== undefined && upperLimit !== undefined);
  if (!known && grade < 2) return undefined;
  return { term: 'creatinine increased', grade, version, atLeast: !known };
}

/** The general scale: 1 mild, 2 moderate, 3 severe, 4 threatens life, which is no milder than severe (read). */
export const severityOfGrade = (grade: number): 'mild' | 'moderate' | 'severe' =>
  grade === 1 ? 'mild' : grade === 2 ? 'moderate' : 'severe';
