/**
 * The engine against the checker: written apart from one page (docs/readiness.md), sharing no code. The full run of 10,000
 * ledgers is a command of its own (docs/safety/oracle.md); this is a share of it, from the same seeds.
 */
import { describe, expect, test } from 'vitest';
import { type NumberKey, type ProtocolSheet, teachingSheet } from '@twelvemonth/clinical';
import { describe as told, differencesOf } from './oracle/agreement.ts';

const LEDGERS = 1000;
const SLICES = 10;
const MINUTES = 60_000;

describe('engine and checker agree, asked on ten consecutive days', () => {
  test.each(Array.from({ length: SLICES }, (_, slice) => slice))(
    'ledgers of slice %i',
    (slice) => {
      const size = LEDGERS / SLICES;
      const differences = Array.from({ length: size }, (_, index) => differencesOf(1 + slice * size + index)).flat();
      expect(differences.slice(0, 3).map(told).join('\n')).toBe('');
    },
    5 * MINUTES,
  );
});

describe('the comparison would notice', () => {
  /** One number of the engine's rule sheet moved a little; the checker keeps the true one. */
  const moved: readonly (readonly [NumberKey, string])[] = [
    ['clearanceFloor', '35.2'],
    ['nearLimitCeiling', '40.5'],
    ['creatinineRise', '27'],
    ['creatinineRiseFactor', '1.32'],
    ['baselineDays', '364'],
    ['weightValidDays', '91'],
    ['bloodsValidDays', '57'],
    ['resultDays', '4'],
    ['calciumLow', '2.21'],
    ['calciumHigh', '2.59'],
    ['calciumLowMgPerDl', '8.9'],
    ['calciumHighMgPerDl', '10.3'],
    ['calciumAdjustSlope', '0.025'],
    ['calciumAdjustAlbumin', '40.5'],
    ['calciumAfterLoadingDays', '8'],
    ['vitaminDFloor', '51'],
    ['vitaminDFloorNgPerMl', '20.5'],
    ['vitaminDValidDays', '366'],
    ['loadingDoses', '7'],
    ['loadingEveryDays', '8'],
    ['loadingHoldsDays', '366'],
    ['maintenanceConfirmDays', '121'],
    ['wellDaysBeforeSample', '3'],
    ['surgerySampleDays', '11'],
    ['hipRepairDays', '15'],
    ['hipLookbackDays', '366'],
    ['pregnancyAnswerDays', '15'],
    ['otherProductMonths', '13'],
    ['denosumabIntervalMonths', '7'],
    ['maxConsecutiveDoses', '7'],
  ];
  /** Ledgers in which each is looked for: enough that every number decides somewhere. */
  const ENOUGH = 600;
  const noticedAt = (alter: (sheet: ProtocolSheet) => ProtocolSheet): number | undefined => {
    for (let seed = 1; seed <= ENOUGH; seed += 1) if (differencesOf(seed, alter).length > 0) return seed;
    return undefined;
  };
  test.each(moved)(
    '%s as %s',
    (key, value) => {
      expect(value).not.toBe(teachingSheet.numbers[key].value);
      expect(
        noticedAt((sheet) => ({ ...sheet, numbers: { ...sheet.numbers, [key]: { ...sheet.numbers[key], value } } })),
      ).toBeDefined();
    },
    5 * MINUTES,
  );
  test('an interval a month longer', () => {
    const longer = (sheet: ProtocolSheet): ProtocolSheet => ({
      ...sheet,
      regimens: sheet.regimens.map((regimen) => ({ ...regimen, intervalMonths: 13 })),
    });
    expect(noticedAt(longer)).toBeDefined();
  });
  test('a course one dose longer', () => {
    const longer = (sheet: ProtocolSheet): ProtocolSheet => ({
      ...sheet,
      regimens: sheet.regimens.map((regimen) => ({ ...regimen, plannedDoses: 4 })),
    });
    expect(noticedAt(longer)).toBeDefined();
  });
});
