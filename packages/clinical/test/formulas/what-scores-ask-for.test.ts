/** What a score or an index asks for: where a cannula is resited, what a grade is called, where a clearance is least sure. */
import { describe, expect, test } from 'vitest';
import {
  bodyMassIndexWarns,
  creatinineClearance,
  creatinineUmolPerL,
  isToBeResited,
  mgPerDlRoundedDown,
  phlebitisScore,
  severityOfGrade,
  weightKg,
} from '@twelvemonth/clinical';

const well = {
  pain: false,
  painAlongCannula: false,
  redness: false,
  swelling: false,
  induration: false,
  venousCord: false,
  fever: false,
};

describe('visual infusion phlebitis score, Jackson 1998 (read): resite from 2 on', () => {
  test.each([
    ['nothing', {}, false],
    ['slight pain', { pain: true }, false],
    ['pain and redness', { pain: true, redness: true }, true],
    ['pain along the cannula, redness, hardening', { painAlongCannula: true, redness: true, induration: true }, true],
  ])('%s', (_, signs, resite) => expect(isToBeResited(phlebitisScore({ ...well, ...signs }))).toBe(resite));
});

test.each([
  [1, 'mild'],
  [2, 'moderate'],
  [3, 'severe'],
  [4, 'severe'],
])('CTCAE 5.0 general scale (read): grade %i is %s', (grade, word) => expect(severityOfGrade(grade)).toBe(word));

describe('MHRA October 2019 (read): the clearance is least sure below an index of 18 and above 40', () => {
  test.each([
    [17.9, true],
    [18, false],
    [25, false],
    [40, false],
    [40.1, true],
  ])('%d', (index, warns) => expect(bodyMassIndexWarns(index) !== '').toBe(warns));
});

describe('a highest creatinine in mg/dL is rounded down, so that it passes too (1 mg/dL = 88.4 umol/L)', () => {
  test.each([
    [104, '1.17'],
    [88, '0.99'],
    [166, '1.87'],
  ])('%i umol/L: %s', (umol, text) => expect(mgPerDlRoundedDown(umol)).toBe(text));
  test('of a woman of 70 with 50 kg, limit 35: 104 umol/L passes, and so does the printed 1.17 mg/dL', () => {
    const plain = { comparator: '' } as const;
    const kg = weightKg({ ...plain, value: '50', unit: 'kg' });
    const umol = creatinineUmolPerL({ ...plain, value: mgPerDlRoundedDown(104), unit: 'mg/dL' });
    if (kg === undefined || umol === undefined) throw new Error('not known units');
    const found = creatinineClearance({ ageYears: 70, sex: 'female', weightKg: kg, creatinineUmolPerL: umol });
    expect(Number(found.byMicromoles.top) / Number(found.byMicromoles.over)).toBeGreaterThanOrEqual(35);
    expect(Number(found.byMilligrams.top) / Number(found.byMilligrams.over)).toBeGreaterThanOrEqual(35);
  });
});
