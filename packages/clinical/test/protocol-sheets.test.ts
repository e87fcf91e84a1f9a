import { describe, expect, test } from 'vitest';
import {
  type Regimen,
  demoSheet,
  emptyNumbers,
  numberKeyNames,
  protocolFrom,
  protocolSchema,
  regimenSchema,
  requirementIds,
  starterSheet,
  teaching,
  teachingSheet,
  underRegimen,
  usualRegimens,
  usualSwitches,
} from '@twelvemonth/clinical';

describe('the starter sheet', () => {
  test('is a sheet, for real people, and has every requirement in its order of gravity', () => {
    expect(protocolSchema.parse(starterSheet)).toEqual(starterSheet);
    expect(starterSheet.teachingOnly).toBe(false);
    expect([...starterSheet.gravity].toSorted()).toEqual([...requirementIds].toSorted());
  });

  test('cannot be made usable while a number is empty, and names each with its suggestion', () => {
    const made = protocolFrom(starterSheet);
    expect(made).toEqual({ empty: emptyNumbers(starterSheet) });
    const empty = emptyNumbers(starterSheet);
    expect(empty.map(({ key }) => key)).toEqual(
      expect.arrayContaining([
        'bloodsValidDays',
        'weightValidDays',
        'creatinineRise',
        'creatinineRiseFactor',
        'observeFirstMinutes',
      ]),
    );
    expect(empty.every(({ suggestion }) => suggestion !== undefined)).toBe(true);
  });

  test('filling all but one is not enough', () => {
    const almost = {
      ...demoSheet('almost'),
      numbers: { ...demoSheet('almost').numbers, bloodsValidDays: starterSheet.numbers.bloodsValidDays },
    };
    expect(protocolFrom(almost)).toEqual({ empty: [{ key: 'bloodsValidDays', suggestion: '42' }] });
  });

  // Product text (EU/UK) 4.2, 4.3, 4.4: clinical.md Z3, Z7, Z17 (read).
  test('states what the product text states', () => {
    expect(starterSheet.numbers.clearanceFloor.value).toBe('35');
    expect(starterSheet.numbers.hipRepairDays.value).toBe('14');
    expect(starterSheet.numbers.runningMinutesLeast.value).toBe('15');
    expect(starterSheet.regimens[0]?.intervalMonths).toBe(12);
    expect(starterSheet.hipRepairNeedsLoading).toBe(true);
  });

  test('every number has a source', () => {
    for (const key of numberKeyNames) expect(starterSheet.numbers[key].source.length).toBeGreaterThan(5);
  });
});

describe('the regimens and switches a sheet begins with', () => {
  test('the yearly infusion is what is meant where nothing is prescribed; every regimen and row has a source and a status', () => {
    expect(usualRegimens[0]?.id).toBe('zoledronic-acid-yearly');
    expect(new Set(usualRegimens.map(({ id }) => id)).size).toBe(usualRegimens.length);
    for (const { source, status } of [...usualRegimens, ...usualSwitches])
      expect([source.length > 5, status !== undefined]).toEqual([true, true]);
  });
  test("each regimen stands on the same sheet with its own numbers in place of the sheet's", () => {
    // Ibandronate product text: creatinine clearance 30; denosumab: severe low calcium below 30, no floor that refuses (clinical.md section 8, read).
    expect(underRegimen(teaching, 'ibandronate-three-monthly').number.clearanceFloor).toBe(30);
    expect(underRegimen(teaching, 'zoledronic-acid-yearly').number.clearanceFloor).toBe(35);
    expect(underRegimen(teaching, 'denosumab-60-six-monthly').number.clearanceFloor).toBe(30);
    expect(underRegimen(teaching, 'a name it does not know')).toBe(teaching);
  });
  test('denosumab and romosozumab may not leave the kidneys out, and there a prescriber decides below the floor: no product text refuses', () => {
    for (const regimen of usualRegimens) {
      const isUnrefused = /^(?:denosumab|romosozumab)/.test(regimen.medicine);
      expect([
        regimen.medicine,
        regimenSchema.safeParse({ ...regimen, leavesOut: ['kidney-function'] }).success,
        regimenSchema.safeParse({ ...regimen, belowClearanceFloor: 'a prescriber decides' }).success,
      ]).toEqual([regimen.medicine, !isUnrefused, isUnrefused]);
    }
  });
  test('calcium, the interval, the course, the order and consent are asked of every medicine', () => {
    const first = usualRegimens[0];
    for (const id of ['calcium', 'interval', 'course', 'prescription', 'consent'] as const)
      expect(regimenSchema.safeParse({ ...first, leavesOut: [id] }).success).toBe(false);
    expect(regimenSchema.safeParse({ ...first, leavesOut: ['hip-repair'] }).success).toBe(true);
  });
  test('a sheet written before there were other medicines reads as it was meant', () => {
    const { id, title, medicine, intervalMonths, plannedDoses, source } = usualRegimens[0] as Regimen;
    const { switches: _none, ...before } = teachingSheet;
    const read = protocolSchema.parse({
      ...before,
      regimens: [{ id, title, medicine, intervalMonths, plannedDoses, source }],
    });
    expect(read.regimens[0]).toMatchObject({
      given: 'infusion',
      recall: 'next dose',
      leavesOut: [],
      countedApart: false,
    });
    expect(read.switches).toEqual([]);
  });
});

describe('the demo sheet', () => {
  test('is the starter with its suggestions accepted as local decisions, and nothing else changed', () => {
    const sheet = demoSheet('thornbeck-1');
    expect('protocol' in protocolFrom(sheet)).toBe(true);
    for (const key of numberKeyNames) {
      const before = starterSheet.numbers[key];
      const { value, status } = sheet.numbers[key];
      const decided = before.value === null;
      expect([value, status]).toEqual(decided ? [before.suggestion, 'local decision'] : [before.value, before.status]);
    }
    expect(sheet.version).toBe('thornbeck-1');
    expect(sheet.teachingOnly).toBe(false);
  });

  test('the teaching sheet can never be mistaken for it', () => {
    expect(teachingSheet.teachingOnly).toBe(true);
  });
});
