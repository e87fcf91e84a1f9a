/**
 * Calcium about a month after a vitamin D loading, which may unmask an overactive parathyroid (Royal Osteoporosis Society 2018,
 * from memory). The teaching protocol's days: from the 21st, by the 42nd.
 */
import { describe, expect, test } from 'vitest';
import { calciumAfterLoading, day, plainDate, standingOf, starterSheet, teaching } from '@twelvemonth/clinical';
import { type Line, at, bloods, personOf } from './person.ts';

const loaded = (taken = 6, last = '2026-10-12'): readonly Line[] => [
  at('2026-09-07', 'vitamin-d-loading', {
    doses: 6,
    everyDays: 7,
    unitsPerDose: 50_000,
    startOn: '2026-09-07' as never,
  }),
  at(last, 'vitamin-d-taken', { doses: taken, source: 'told us' }),
];
const calcium = (on: string, signedOn: string | null = on) =>
  bloods(on, { 'adjusted calcium': '2.40 mmol/L' }, signedOn);
const due = (lines: readonly Line[], on = '2026-11-01') => {
  const found = calciumAfterLoading(personOf(lines), teaching, day(on));
  return found === undefined ? undefined : plainDate(found.by);
};

describe('calcium about a month after a loading', () => {
  test('is due once it is finished, and not before', () => {
    expect(due(loaded())).toBe('2026-11-23');
    expect(due(loaded(), '2026-10-12')).toBe('2026-11-23');
    expect(due(loaded(), '2026-10-11')).toBeUndefined();
    expect(due(loaded(5))).toBeUndefined();
    expect(due([])).toBeUndefined();
  });
  test('a signed sample from the 21st day on ends it; the one before the dose does not', () => {
    expect(due([...loaded(), ...calcium('2026-10-19')])).toBe('2026-11-23');
    expect(due([...loaded(), ...calcium('2026-11-01')], '2026-11-05')).toBe('2026-11-23');
    expect(due([...loaded(), ...calcium('2026-11-02')], '2026-11-05')).toBeUndefined();
    expect(due([...loaded(), ...calcium('2026-11-02', null)], '2026-11-05')).toBe('2026-11-23');
  });
  test('past its day it is still asked for, for as long as the loading stands for a level', () => {
    const says = (on: string) => calciumAfterLoading(personOf(loaded()), teaching, day(on))?.says;
    expect(says('2026-11-23')).toContain('sample from 2 Nov 2026 to 23 Nov 2026');
    expect(says('2026-11-24')).toContain('its sample was due by 23 Nov 2026');
    expect(due(loaded(), '2027-10-12')).toBe('2026-11-23');
    expect(due(loaded(), '2027-10-13')).toBeUndefined();
  });
  test('nobody has to look any more after a death', () =>
    expect(due([...loaded(), at('2026-10-20', 'died', { source: 'family doctor' })])).toBeUndefined());
  test('both numbers are the unit’s to decide', () => {
    for (const key of ['calciumMonthAfterLoadingFromDays', 'calciumMonthAfterLoadingByDays'] as const)
      expect(starterSheet.numbers[key]).toMatchObject({ value: null, status: 'from memory' });
  });
  test('it stands where the person stands, with its day', () => {
    const lines = [
      at('2026-09-01', 'referral', { from: 'a ward', reason: 'T -3.4', tier: 'routine', unit: 'thornbeck' }),
      at('2026-10-30', 'triage', { outcome: 'accepted' }),
      ...loaded(),
    ];
    const { says, on } = standingOf(personOf(lines), teaching, day('2026-11-01'));
    expect(says).toContain('calcium after the vitamin D loading that ended on 12 Oct 2026');
    expect(on).toBe(day('2026-11-23'));
  });
});
