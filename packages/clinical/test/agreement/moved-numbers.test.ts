/** The comparison of the engine with the checker would notice a number that is a little wrong. */
import { describe, expect, test } from 'vitest';
import { type NumberKey, type ProtocolSheet, teachingSheet } from '@twelvemonth/clinical';
import { differencesOf } from '../oracle/agreement.ts';

describe('the comparison would notice', () => {
  /**
   * One number of the engine's rule sheet moved a little; the checker keeps the true one. The last column is the ledger from
   * which the search begins: the first that noticed when this was written, to save time.
   */
  const moved: readonly (readonly [NumberKey, string, number])[] = [
    ['clearanceFloor', '35.2', 386],
    ['nearLimitCeiling', '40.5', 38],
    ['creatinineRise', '27', 48],
    ['creatinineRiseFactor', '1.32', 199],
    ['baselineDays', '364', 46],
    ['weightValidDays', '91', 9],
    ['bloodsValidDays', '57', 1],
    ['resultDays', '4', 4],
    ['calciumLow', '2.21', 8],
    ['calciumHigh', '2.59', 32],
    ['calciumLowMgPerDl', '8.9', 219],
    ['calciumHighMgPerDl', '10.3', 129],
    ['calciumAdjustSlope', '0.025', 327],
    ['calciumAdjustAlbumin', '40.5', 249],
    ['calciumAfterLoadingDays', '8', 15],
    ['vitaminDFloor', '51', 5],
    ['vitaminDFloorNgPerMl', '20.5', 10],
    ['vitaminDValidDays', '366', 10],
    ['loadingDoses', '7', 26],
    ['loadingEveryDays', '8', 26],
    ['loadingHoldsDays', '366', 90],
    ['maintenanceConfirmDays', '121', 15],
    ['wellDaysBeforeSample', '3', 392],
    ['surgerySampleDays', '11', 750],
    ['hipRepairDays', '15', 55],
    ['hipLookbackDays', '366', 49],
    ['pregnancyAnswerDays', '15', 9],
    ['exceptionLongestDays', '91', 68],
    ['exceptionBloodsOldestDays', '101', 35],
    ['otherProductMonths', '13', 127],
    ['denosumabIntervalMonths', '7', 9],
    ['denosumabSecondDoseMonths', '2', 81],
    ['maxConsecutiveDoses', '7', 170],
    ['heightLossCentimeters', '4.1', 336],
    ['teethAnswerDays', '731', 15],
    ['dentalValidDays', '366', 43],
    ['consentValidDays', '731', 21],
  ];
  /** Ledgers in which each is looked for: enough that every number decides somewhere. */
  const ENOUGH = 600;
  const noticedAt = (alter: (sheet: ProtocolSheet) => ProtocolSheet, first = 1): number | undefined => {
    for (let seed = first; seed < first + ENOUGH; seed += 1) if (differencesOf(seed, alter).length > 0) return seed;
    return undefined;
  };
  test.each(moved)('%s as %s', (key, value, first) => {
    expect(value).not.toBe(teachingSheet.numbers[key].value);
    expect(
      noticedAt(
        (sheet) => ({ ...sheet, numbers: { ...sheet.numbers, [key]: { ...sheet.numbers[key], value } } }),
        first,
      ),
    ).toBeDefined();
  });
  test('an interval a month longer', () => {
    const longer = (sheet: ProtocolSheet): ProtocolSheet => ({
      ...sheet,
      regimens: sheet.regimens.map((regimen) => ({ ...regimen, intervalMonths: 13 })),
    });
    expect(noticedAt(longer)).toBeDefined();
  });
  test('denosumab refused below its floor', () => {
    const refused = (sheet: ProtocolSheet): ProtocolSheet => ({
      ...sheet,
      regimens: sheet.regimens.map((regimen) => ({ ...regimen, belowClearanceFloor: 'not given' })),
    });
    expect(noticedAt(refused, 27)).toBeDefined();
  });
  test('a course one dose longer', () => {
    const longer = (sheet: ProtocolSheet): ProtocolSheet => ({
      ...sheet,
      regimens: sheet.regimens.map((regimen) => ({ ...regimen, plannedDoses: 4 })),
    });
    expect(noticedAt(longer)).toBeDefined();
  });
});
