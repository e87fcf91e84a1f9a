/**
 * A prescriber's exception ends when the protocol says, and its author neither gives the dose nor checks it (safety page, "What
 * nobody can make an exception for": a named prescriber who is not giving this dose; the numbers: common practice, no source).
 */
import { describe, expect, test } from 'vitest';
import { starterSheet, teachingSheet } from '@twelvemonth/clinical';
import { type DayUnit, onTheDay, people, startInfusion } from './a-day-unit.ts';

const names = (refusals: readonly { name: string }[]): string[] => refusals.map(({ name }) => name);
const exception = (expiresOn: string, requirement = 'vitamin D') => ({ requirement, reason: 'agreed', expiresOn });
/** Halina, who also works as a nurse on other days. */
const halinaAsNurse = { staff: people.halina.staff, role: 'nurse' } as const;
/** A prescriber who has ordered nothing for this person. */
const aldo = { staff: 'aldo', role: 'prescriber' } as const;
const aldoAsNurse = { staff: 'aldo', role: 'nurse' } as const;

const excepted = (unit: DayUnit, by: Parameters<DayUnit['line']>[0], until = '2026-12-01'): DayUnit => {
  expect(unit.line(by, 'prescriber-exception', exception(until))).toEqual([]);
  return unit;
};

describe('how long it may last', () => {
  // On 26 November 2026; the teaching protocol allows 90 days: 24 February 2027.
  test('to the last day the protocol allows, and not a day longer', () => {
    expect(teachingSheet.numbers.exceptionLongestDays.value).toBe('90');
    expect(names(onTheDay().line('halina', 'prescriber-exception', exception('2027-02-24')))).toEqual([]);
    expect(onTheDay().line('halina', 'prescriber-exception', exception('2027-02-25'))).toMatchObject([
      { name: 'field-wrong', field: 'line.body.expiresOn' },
    ]);
  });
  test('one that is over before it begins is refused', () =>
    expect(names(onTheDay().line('halina', 'prescriber-exception', exception('2026-11-25')))).toEqual(['field-wrong']));
  test('both numbers are the unit’s to decide: the starters leave them empty, with a suggestion', () => {
    for (const key of ['exceptionLongestDays', 'exceptionBloodsOldestDays'] as const)
      expect(starterSheet.numbers[key]).toMatchObject({ value: null, suggestion: expect.stringMatching(/^\d+$/) });
  });
});

describe('its author at the chair', () => {
  const ready = (unit: DayUnit): DayUnit => unit.go().prepared();
  test('does not give the dose; another person does', () => {
    const unit = ready(excepted(onTheDay(), aldo));
    unit.expect('imre', unit.check());
    expect(unit.refused(aldoAsNurse, startInfusion)).toEqual(['exception-author-may-not-give']);
    unit.expect('dana', startInfusion);
  });
  test('does not make the second check; another person does', () => {
    const unit = ready(excepted(onTheDay(), aldo));
    expect(unit.refused(aldoAsNurse, unit.check())).toEqual(['exception-author-may-not-give']);
    unit.expect('imre', unit.check());
  });
  test('does not give what is written by hand', () => {
    const unit = onTheDay();
    unit.write('halina', 'prescription', {
      regimen: 'pamidronate-three-monthly',
      validFrom: unit.today(),
      validUntil: '2028-01-01',
    });
    excepted(unit, aldo).go();
    const byHand = { medicine: 'pamidronate', setting: 'this service', batch: 'PA-7711' };
    expect(names(unit.line(aldoAsNurse, 'dose', byHand))).toEqual(['exception-author-may-not-give']);
    expect(unit.line('dana', 'dose', byHand)).toEqual([]);
  });
  test('one that is over binds nobody', () => {
    const unit = onTheDay().at('2026-11-24T10:00:00.000Z');
    excepted(unit, aldo, '2026-11-25').at('2026-11-26T08:30:00.000Z');
    ready(unit);
    unit.expect(aldoAsNurse, unit.check());
  });
  test('who prescribed and made the exception is told both', () => {
    const unit = ready(excepted(onTheDay(), 'halina'));
    unit.expect('imre', unit.check());
    expect(unit.refused(halinaAsNurse, startInfusion)).toEqual([
      'prescriber-may-not-give',
      'exception-author-may-not-give',
    ]);
  });
});
