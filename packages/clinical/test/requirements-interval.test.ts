/** The interval since the last dose (docs/readiness.md R6), day by day at its edges. Asked on 25 November 2026, teaching protocol. */
import { describe, expect, test } from 'vitest';
import { day } from '@twelvemonth/clinical';
import { judge, verdictsOn, verdictOf } from './judging.ts';
import { asked, at, doseGiven } from './person.ts';

describe('interval', () => {
  test('no earlier dose: ready', () =>
    expect(judge('interval', []).on(asked)).toMatchObject({ verdict: 'ready', cause: 'no earlier dose recorded' }));
  test('the day before the anniversary, on it, after it', () => {
    expect(verdictsOn('interval', [doseGiven('2025-12-02')], '2026-12-01', '2026-12-02', '2026-12-03')).toEqual([
      'not ready',
      'ready',
      'ready',
    ]);
  });
  test('no 365-day rule: over a leap day the anniversary is 366 days on', () => {
    expect(
      verdictsOn(
        'interval',
        [
          doseGiven('2023-12-02'),
          at('2023-12-02', 'prescription', {
            regimen: 'zoledronic-acid-yearly',
            validFrom: '2023-01-01' as never,
            validUntil: '2030-01-01' as never,
          }),
        ],
        '2024-11-30',
        '2024-12-01',
        '2024-12-02',
      ),
    ).toEqual(['not ready', 'not ready', 'ready']);
    expect(day('2024-12-02') - day('2023-12-02')).toBe(366);
  });
  test('29 February 2024: 27 February 2025 not yet, 28 February 2025 met', () => {
    expect(verdictsOn('interval', [doseGiven('2024-02-29')], '2025-02-27', '2025-02-28')).toEqual([
      'not ready',
      'ready',
    ]);
  });
  test("the prescription's own interval goes before the regimen's", () => {
    const own = at('2026-01-01', 'prescription', {
      regimen: 'zoledronic-acid-yearly',
      validFrom: '2026-01-01' as never,
      validUntil: '2027-12-31' as never,
      interval: { months: 18, reason: 'after three doses' },
    });
    expect(verdictsOn('interval', [doseGiven('2025-08-31'), own], '2027-02-27', '2027-02-28')).toEqual([
      'not ready',
      'ready',
    ]);
  });
  const part = at(
    '2026-10-01',
    'dose',
    { medicine: 'zoledronic acid 5 mg', setting: 'this service', partMilliliters: 40 },
    'part',
  );
  const decided = (question: 'part dose counts' | 'part dose does not count', on = '2026-10-02') =>
    at(on, 'prescriber-decision', { question, about: 'part', reason: 'stopped for infiltration' });
  test('a part dose nobody has decided about: cannot say on any date', () => {
    expect(verdictsOn('interval', [doseGiven('2025-09-01'), part], '2026-11-25', '2029-01-01')).toEqual([
      'cannot say',
      'cannot say',
    ]);
  });
  test('decided: it counts, or it does not; the newest word holds', () => {
    expect(verdictOf('interval', [part, decided('part dose counts')])).toBe('not ready');
    expect(verdictOf('interval', [part, decided('part dose does not count')])).toBe('not ready');
    expect(
      verdictOf('interval', [part, decided('part dose does not count'), decided('part dose counts', '2026-10-05')]),
    ).toBe('not ready');
  });
  test('the interval runs from a part dose that does not count, as from a whole one (product text: once a year)', () => {
    const notCounted = [doseGiven('2025-09-01'), part, decided('part dose does not count')];
    expect(verdictsOn('interval', notCounted, '2026-11-25', '2027-09-30', '2027-10-01')).toEqual([
      'not ready',
      'not ready',
      'ready',
    ]);
  });
  test('the 4 mg product holds for 12 months unless a prescriber decides about it', () => {
    const oncology = at('2026-01-10', 'dose', { medicine: 'zoledronic acid 4 mg', setting: 'elsewhere' }, 'z4');
    expect(verdictsOn('interval', [oncology], '2027-01-09', '2027-01-10')).toEqual(['not ready', 'ready']);
    expect(
      verdictOf('interval', [
        oncology,
        at('2026-11-01', 'prescriber-decision', {
          question: 'after 4 mg product',
          about: 'z4',
          reason: 'oncology agrees',
        }),
      ]),
    ).toBe('ready');
  });
  test('denosumab is no dose of this course', () => {
    expect(
      verdictOf('interval', [at('2026-11-01', 'dose', { medicine: 'denosumab 60 mg', setting: 'elsewhere' })]),
    ).toBe('ready');
  });
});
