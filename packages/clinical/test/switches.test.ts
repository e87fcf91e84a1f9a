/**
 * From one bone medicine to another: earliest and latest start (docs/readiness.md R11; the clinical fact sheet, section 4f,
 * whose sources stand beside each row of the sheet).
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type BoneMedicine,
  type RegimenMedicine,
  boneMedicines,
  day,
  evidenceOf,
  everyDay,
  isTakenDaily,
  plainDate,
  readiness,
  regimenMedicines,
  requirements,
  switchWindow,
  teaching,
  underRegimen,
  usualRegimens,
} from '@twelvemonth/clinical';
import { type Line, asked, at, bloods, born, clear, personOf, weighed } from './person.ts';

const given = (on: string, medicine: BoneMedicine, more: object = {}, id?: string) =>
  at(on, 'dose', { medicine, setting: 'elsewhere', ...more }, id);
const judge = (lines: readonly Line[], regimen = 'zoledronic-acid-yearly') =>
  requirements['other-bone-medicines'].judge(evidenceOf(personOf(lines), asked), underRegimen(teaching, regimen));
const verdicts = (lines: readonly Line[], dates: readonly string[], regimen?: string) =>
  dates.map((date) => judge(lines, regimen).on(day(date)).verdict);
const windowOf = (from: BoneMedicine, ended: string, to: RegimenMedicine) => {
  const found = switchWindow(teaching, from, day(ended), to);
  return found === undefined
    ? undefined
    : [plainDate(found.earliest), found.latest === undefined ? undefined : plainDate(found.latest)];
};

describe('one function says when', () => {
  test.each([
    // ECTS 2021, Tsourdi, JCEM 106:264: six months after the last injection (read); at most a month late: Morin 2023 (read).
    ['denosumab 60 mg', '2026-01-15', 'zoledronic acid 5 mg', ['2026-07-15', '2026-08-15']],
    ['denosumab 120 mg', '2026-01-15', 'zoledronic acid 5 mg', ['2026-07-15', '2026-08-15']],
    ['denosumab 60 mg', '2025-08-31', 'ibandronate 3 mg', ['2026-02-28', '2026-03-31']],
    // Romosozumab product text: transition advised (read); month 12 to 13 (from memory). The twelfth dose is of month 11.
    ['romosozumab 210 mg', '2026-10-01', 'zoledronic acid 5 mg', ['2026-11-01', '2026-12-01']],
    ['romosozumab 210 mg', '2026-10-01', 'denosumab 60 mg', ['2026-11-01', '2026-12-01']],
    // Within about a month of the end: AACE, NOGG (from memory).
    ['teriparatide', '2026-10-01', 'zoledronic acid 5 mg', ['2026-10-01', '2026-11-01']],
    // When the next dose would be due: three months (from memory).
    ['ibandronate 3 mg', '2026-08-25', 'zoledronic acid 5 mg', ['2026-11-25', undefined]],
    ['pamidronate', '2026-08-25', 'zoledronic acid 5 mg', ['2026-11-25', undefined]],
    // Common practice, no source.
    ['zoledronic acid 5 mg', '2026-01-25', 'denosumab 60 mg', ['2027-01-25', undefined]],
    // Product text 4.4: never together with the 4 mg product; twelve months by the protocol.
    ['zoledronic acid 4 mg', '2026-01-25', 'zoledronic acid 5 mg', ['2027-01-25', undefined]],
  ] as const)('%s, last on %s, to %s', (from, ended, to, expected) =>
    expect(windowOf(from, ended, to)).toEqual(expected),
  );

  test('between any two medicines it answers with a window that is no earlier than the end, or says that there is no rule', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...boneMedicines),
        fc.constantFrom(...regimenMedicines),
        fc.integer({ min: day('2010-01-01'), max: day('2030-01-01') }),
        (from, to, on) => {
          const found = switchWindow(teaching, from, on as never, to);
          if (found === undefined) return;
          expect(found.earliest).toBeGreaterThanOrEqual(on);
          expect(found.latest ?? found.earliest).toBeGreaterThanOrEqual(found.earliest);
          expect(found.source.length).toBeGreaterThan(3);
        },
      ),
      { seed: 20_261_125, numRuns: 500 },
    );
  });
  test('after romosozumab no other builder, after denosumab whatever follows waits: a missing row is no permission', () => {
    expect(windowOf('romosozumab 210 mg', '2026-10-01', 'teriparatide')).toBeUndefined();
    expect(windowOf('pamidronate', '2026-10-01', 'romosozumab 210 mg')).toBeUndefined();
  });
});

describe('as a requirement', () => {
  test('not ready until the earliest day, ready from it', () => {
    expect(verdicts([given('2026-06-15', 'denosumab 60 mg')], ['2026-12-14', '2026-12-15'])).toEqual([
      'not ready',
      'ready',
    ]);
    expect(verdicts([given('2026-11-01', 'romosozumab 210 mg')], ['2026-11-30', '2026-12-01'])).toEqual([
      'not ready',
      'ready',
    ]);
    expect(verdicts([given('2026-09-01', 'ibandronate 3 mg')], ['2026-11-30', '2026-12-01'])).toEqual([
      'not ready',
      'ready',
    ]);
  });
  test('of several the slowest decides', () => {
    const both = [given('2026-06-15', 'denosumab 60 mg'), given('2026-11-20', 'ibandronate 3 mg')];
    expect(verdicts(both, ['2027-02-19', '2027-02-20'])).toEqual(['not ready', 'ready']);
  });
  test('without a row: cannot say, until a prescriber agrees or the new medicine was given after it', () => {
    const last = given('2026-10-01', 'romosozumab 210 mg', {}, 'r');
    const found = judge([last], 'teriparatide-daily');
    expect(found.on(asked)).toMatchObject({
      verdict: 'cannot say',
      cause: 'no rule for teriparatide after romosozumab 210 mg',
    });
    expect(found.path(asked).is).toBe('blocked');
    const agreed = at('2026-11-01', 'prescriber-decision', { question: 'switch agreed', about: 'r', reason: 'x' });
    expect(verdicts([last, agreed], ['2026-11-25'], 'teriparatide-daily')).toEqual(['ready']);
    expect(
      verdicts(
        [last, given('2026-11-10', 'teriparatide', { until: '2026-11-20' })],
        ['2026-11-25'],
        'teriparatide-daily',
      ),
    ).toEqual(['ready']);
  });
  test('teriparatide without a last day is still taken, whatever comes next; with one it waits no longer', () => {
    expect(verdicts([given('2024-11-01', 'teriparatide')], ['2026-11-25', '2029-01-01'])).toEqual([
      'cannot say',
      'cannot say',
    ]);
    expect(verdicts([given('2024-11-01', 'teriparatide', { until: '2026-11-20' })], ['2026-11-25'])).toEqual(['ready']);
    expect(verdicts([given('2024-11-01', 'teriparatide')], ['2026-11-25'], 'teriparatide-daily')).toEqual(['ready']);
  });
  test('the same medicine again is no switch: its interval says when', () => {
    for (const { id, medicine } of usualRegimens)
      expect([
        id,
        verdicts(
          [given('2026-11-20', medicine, isTakenDaily(medicine) ? { until: '2026-11-21' } : {})],
          ['2026-11-25'],
          id,
        ),
      ]).toEqual([id, ['ready']]);
  });
  test('tablets: once stopped, at once', () => {
    // NOGG and AACE practice: no wash-out (from memory).
    const tablet = (stoppedOn?: string) =>
      at('2020-01-01', 'medicine', {
        name: 'alendronic acid',
        sort: 'bisphosphonate tablet',
        ...(stoppedOn === undefined ? {} : { stoppedOn: stoppedOn as never }),
      });
    for (const { id } of usualRegimens) {
      expect(verdicts([tablet()], ['2026-11-25'], id)).toEqual(['cannot say']);
      expect(verdicts([tablet('2026-11-25')], ['2026-11-25'], id)).toEqual(['ready']);
    }
  });
  test('the window opens on the earliest day, and where nobody has agreed there is none', () => {
    const asking = (lines: readonly Line[]) =>
      readiness(
        personOf([
          ...clear,
          born('1941-06-02'),
          weighed('2026-11-24', '56.2'),
          ...bloods('2026-11-20', {
            creatinine: '79 umol/L',
            'adjusted calcium': '2.29 mmol/L',
            'vitamin D': '68 nmol/L',
          }),
          ...lines,
        ]),
        { protocols: [{ from: day('2015-01-01'), protocol: teaching }], calendar: everyDay },
        asked,
      );
    expect(asking([given('2026-11-05', 'romosozumab 210 mg')]).window?.first).toBe(day('2026-12-05'));
    const still = asking([given('2025-11-01', 'teriparatide')]);
    expect(still.window).toBeUndefined();
    expect(still.noWindow?.needs.map(({ requirement }) => requirement)).toEqual(['other-bone-medicines']);
    expect(still.noWindow?.ifSettled?.first).toBe(asked);
  });
});
