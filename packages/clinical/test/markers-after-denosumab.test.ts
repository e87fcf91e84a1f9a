/**
 * Bone markers after what follows denosumab, at three and six months (ECTS 2021, Tsourdi, JCEM 106:264: after the first infusion
 * CTX or P1NP are looked at, a raised one asks for a second; the months from memory).
 */
import { describe, expect, test } from 'vitest';
import { day, markersAfterDenosumab, plainDate, standingOf, starterSheet, teaching } from '@twelvemonth/clinical';
import { type Line, at, bloods, personOf } from './person.ts';

type Medicine = 'denosumab 60 mg' | 'denosumab 120 mg' | 'zoledronic acid 5 mg' | 'ibandronate 3 mg';
const dose = (on: string, medicine: Medicine, more: object = {}): Line =>
  at(on, 'dose', { medicine, setting: 'this service', ...more });
const followed = [dose('2025-07-15', 'denosumab 60 mg'), dose('2026-01-20', 'zoledronic acid 5 mg')];
const ctx = (on: string, signedOn: string | null = on) => bloods(on, { CTX: '300 ng/L' }, signedOn);
const due = (lines: readonly Line[], on = '2026-02-01') => {
  const found = markersAfterDenosumab(personOf(lines), teaching, day(on));
  return found === undefined ? undefined : plainDate(found.by);
};

describe('bone markers after denosumab', () => {
  test('three months after what followed it, then six', () => {
    expect(due(followed)).toBe('2026-04-20');
    expect(due([...followed, ...ctx('2026-04-10')], '2026-04-12')).toBe('2026-07-20');
    expect(due([...followed, ...ctx('2026-04-10'), ...ctx('2026-07-15')], '2026-07-16')).toBeUndefined();
  });
  test('one sample late enough serves both', () =>
    expect(due([...followed, ...ctx('2026-06-20')], '2026-06-21')).toBeUndefined());
  test('one of before the last month, and one nobody has signed, do not count', () => {
    expect(due([...followed, ...ctx('2026-03-19')], '2026-04-01')).toBe('2026-04-20');
    expect(due([...followed, ...ctx('2026-03-20')], '2026-04-01')).toBe('2026-07-20');
    expect(due([...followed, ...ctx('2026-04-10', null)], '2026-04-12')).toBe('2026-04-20');
  });
  test('P1NP serves as well', () =>
    expect(due([...followed, ...bloods('2026-04-10', { P1NP: '30 ug/L' })], '2026-04-12')).toBe('2026-07-20'));
  test('past its day it is still asked for, until a year of it is over', () => {
    const says = (on: string) => markersAfterDenosumab(personOf(followed), teaching, day(on))?.says;
    expect(says('2026-04-20')).toContain('sample by 20 Apr 2026');
    expect(says('2026-04-21')).toContain('their sample was due by 20 Apr 2026');
    expect(says('2026-04-21')).toContain('raised, a prescriber decides about a second dose');
    expect(due(followed, '2027-01-20')).toBe('2026-04-20');
    expect(due(followed, '2027-01-21')).toBeUndefined();
  });
  test('after the 120 mg too, and after any other medicine that follows', () => {
    expect(due([dose('2025-07-15', 'denosumab 120 mg'), dose('2026-01-20', 'ibandronate 3 mg')])).toBe('2026-04-20');
  });
  test('not without denosumab, not once a second dose was given, not after denosumab again, not of a dose elsewhere or after death', () => {
    expect(due(followed.slice(1))).toBeUndefined();
    expect(due([...followed, dose('2026-04-25', 'zoledronic acid 5 mg')], '2026-05-01')).toBeUndefined();
    expect(due([...followed, dose('2026-03-01', 'denosumab 60 mg')], '2026-03-02')).toBeUndefined();
    const elsewhere = dose('2026-01-20', 'zoledronic acid 5 mg', { setting: 'elsewhere' });
    expect(due([...followed.slice(0, 1), elsewhere])).toBeUndefined();
    expect(due([...followed, at('2026-01-30', 'died', { source: 'family doctor' })])).toBeUndefined();
  });
  test('a part dose has not followed it', () => {
    const part = dose('2026-01-20', 'zoledronic acid 5 mg', { partMilliliters: 40 });
    expect(due([...followed.slice(0, 1), part])).toBeUndefined();
  });
  test('both months are the unit’s to decide', () => {
    for (const key of ['denosumabMarkersFirstMonths', 'denosumabMarkersSecondMonths'] as const)
      expect(starterSheet.numbers[key]).toMatchObject({ value: null, status: 'from memory' });
  });
  test('it stands where the person stands, and the next look is no later', () => {
    const lines = [
      at('2025-05-01', 'referral', { from: 'a ward', reason: 'T -3.4', tier: 'routine', unit: 'thornbeck' }),
      at('2025-05-02', 'triage', { outcome: 'accepted' }),
      ...followed,
      ...bloods('2025-07-25', { 'adjusted calcium': '2.30 mmol/L' }),
    ];
    const { says, on } = standingOf(personOf(lines), teaching, day('2026-02-01'));
    expect(says).toContain('bone markers after zoledronic acid 5 mg of 20 Jan 2026, which followed denosumab');
    expect(on).toBe(day('2026-04-20'));
  });
});
