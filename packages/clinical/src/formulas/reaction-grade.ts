/**
 * Severity of a reaction in the common terminology criteria for adverse events (CTCAE). A grade means nothing without its
 * version, so the two are told together: version 6.0 was published on 22 July 2025; its fever rows and those of 5.0 agree
 * (6.0 read, 5.0 from memory); the bands of low calcium were read in 4.03 and are the same in 5.0 by memory.
 *
 * Only what can be told from numbers is worked out; for the rest the person who sees the patient chooses among the texts.
 * Grade 5 is death. A grade describes what happened; it is no advice on what to do, and no early-warning score.
 */
import { type Scaled, scaled } from '../exact/decimal.ts';
import { type Ratio, compareRatio } from '../exact/ratio.ts';
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

const calciumBands: readonly (readonly [from: Scaled, grade: Grade])[] = [
  [scaled('2.0'), 1],
  [scaled('1.75'), 2],
  [scaled('1.5'), 3],
];

/** Low adjusted calcium in mmol/L, below the laboratory's own lower limit: to 2.0, to 1.75, to 1.5, below. */
export function lowCalciumGrade(adjustedMmolPerL: Ratio, lowerLimitMmolPerL: Scaled, version: CtcaeVersion): Graded {
  const grade =
    compareRatio(adjustedMmolPerL, lowerLimitMmolPerL) >= 0
      ? 0
      : (calciumBands.find(([from]) => compareRatio(adjustedMmolPerL, from) >= 0)?.[1] ?? 4);
  return { term: 'low calcium', grade, version };
}

/** What each grade from 1 on says, in short, for terms a person grades by looking (5.0 from memory; extravasation read). */
export const gradeTexts = {
  fever: [
    '38.0 to 39.0 degrees',
    'above 39.0 to 40.0 degrees',
    'above 40.0 degrees for 24 hours or less',
    'above 40.0 degrees for more than 24 hours',
  ],
  'flu-like symptoms': [
    'mild symptoms',
    'moderate: limits shopping, housework and the like',
    'severe: limits washing, dressing and eating',
  ],
  'infusion-related reaction': [
    'mild and passing; the infusion need not be interrupted',
    'interrupted, and answers promptly to treatment; medicines for it for at most a day',
    'prolonged, or comes back, or brings the person into hospital',
    'threatens life',
  ],
  'infusion site extravasation': [
    'painless swelling',
    'redness with swelling, pain, hardening or phlebitis',
    'ulcer or dead tissue; an operation',
    'threatens life',
  ],
} as const satisfies Readonly<Record<string, readonly string[]>>;

/** The general scale: 1 mild, 2 moderate, 3 severe, 4 threatens life, which is no milder than severe (read). */
export const severityOfGrade = (grade: number): 'mild' | 'moderate' | 'severe' =>
  grade === 1 ? 'mild' : grade === 2 ? 'moderate' : 'severe';
