/** When a reminder of a place is due, and who is never reminded (practice page 1a row 15: 28, 7 and 2 days; common practice, no source). */
import { describe, expect, test } from 'vitest';
import { type Fact, day, placesOf, reminderDue, taskRows } from '@twelvemonth/clinical';
import { DayUnit, type Person } from './decide/a-day-unit.ts';

const days = [28, 7, 2] as const;
const session = 'thornbeck-2026-12-10';
const contact = { telephone: '07700 900123', remindBy: ['text message'] };

function booked(): DayUnit {
  const unit = new DayUnit().at('2026-11-25T09:00:00.000Z').ready();
  unit.plan(session, '2026-12-10');
  unit.write('bettina', 'contact', contact);
  unit.expect('bettina', { name: 'book', patient: 'p1', session, place: 1 });
  return unit;
}
const due = (unit: DayUnit, on: string): number | undefined => reminderDue(unit.patient(), days, day(on))?.daysBefore;
const begun = (unit: DayUnit, daysBefore: number) => ({
  channel: 'text message',
  to: '07700 900123',
  place: placesOf(unit.patient())[0]?.entry ?? 'none',
  daysBefore,
  text: 'you have a place',
});
const tried = (unit: DayUnit, kind: Fact['kind'], body: unknown, who: Person = 'bettina'): string[] =>
  unit.line(who, kind, body).map(({ name }) => name);
const tasks = (unit: DayUnit): string[] =>
  taskRows(unit.patient(), undefined, day(unit.today())).map(({ columns }) => String(columns['task']));

describe('when', () => {
  test('on its day and until the next one; not one whose day lies before the booking; never on the day itself', () => {
    const unit = booked();
    // Booked 15 days before: the one of 28 days is not owed.
    expect(due(unit, '2026-12-02')).toBeUndefined();
    expect(due(unit, '2026-12-03')).toBe(7);
    expect(due(unit, '2026-12-07')).toBe(7);
    // Both missed: only the nearest goes.
    expect(due(unit, '2026-12-08')).toBe(2);
    expect(due(unit, '2026-12-10')).toBeUndefined();
  });
  test('a place that moves takes its reminders with it', () => {
    const unit = booked().at('2026-12-03T09:00:00.000Z');
    unit.write('bettina', 'message-begun', begun(unit, 7));
    expect(due(unit, '2026-12-03')).toBeUndefined();
    unit.plan('later', '2026-12-17');
    const why = { reason: 'transport', askedBy: 'the patient' } as const;
    unit.expect('bettina', { name: 'move', patient: 'p1', from: session, to: 'later', place: 1, ...why });
    expect(due(unit, '2026-12-08')).toBeUndefined();
    expect(due(unit, '2026-12-10')).toBe(7);
    unit.expect('bettina', { name: 'give up place', patient: 'p1', session: 'later', ...why });
    expect(due(unit, '2026-12-10')).toBeUndefined();
  });
});

describe('once, and only to who agreed', () => {
  test('nothing goes twice, also where nobody knows whether it went; what the channel did not take may go again', () => {
    const unit = booked().at('2026-12-03T09:00:00.000Z');
    unit.write('bettina', 'message-begun', begun(unit, 7));
    expect(tried(unit, 'message-begun', begun(unit, 7))).toEqual(['step-already-done']);
    expect(tasks(unit)).toContain('look at the reminder');
    const message = unit.newest('message-begun').id;
    unit.write('bettina', 'message-ended', { outcome: 'not accepted', message, because: 'no such number' });
    expect(tasks(unit)).toContain('look at the reminder');
    expect(due(unit, '2026-12-03')).toBe(7);
    unit.write('bettina', 'message-begun', begun(unit, 7));
    unit.write('bettina', 'message-ended', { outcome: 'accepted', message: unit.newest('message-begun').id });
    expect(due(unit, '2026-12-03')).toBeUndefined();
    expect(tasks(unit)).not.toContain('look at the reminder');
  });
  test('one that came back waits for somebody until they were spoken with', () => {
    const unit = booked().at('2026-12-03T09:00:00.000Z');
    unit.write('bettina', 'message-begun', begun(unit, 7));
    const message = unit.newest('message-begun').id;
    unit.write('bettina', 'message-ended', { outcome: 'came back', message, because: 'number not in use' });
    expect(tasks(unit)).toContain('look at the reminder');
    unit.write('bettina', 'call', { route: 'telephone', about: 'place', reached: true });
    expect(tasks(unit)).not.toContain('look at the reminder');
  });
  test('without consent to the channel, without the place, after a no or a death nothing goes', () => {
    const unit = booked().at('2026-12-03T09:00:00.000Z');
    expect(tried(unit, 'message-begun', { ...begun(unit, 7), channel: 'e-mail' })).toEqual(['no-contact-wanted']);
    expect(tried(unit, 'message-begun', { ...begun(unit, 7), place: 'none' })).toContain('not-booked-there');
    expect(tried(unit, 'message-ended', { outcome: 'accepted', message: 'none' })).toContain('no-such-entry');
    unit.write('imre', 'refusal', { to: 'all contact', words: 'leave me be' });
    expect(due(unit, '2026-12-03')).toBeUndefined();
    expect(tried(unit, 'message-begun', begun(unit, 7))).toContain('no-contact-wanted');
    const other = booked().at('2026-12-03T09:00:00.000Z');
    other.write('imre', 'died', { source: 'family doctor' });
    expect(due(other, '2026-12-03')).toBeUndefined();
    expect(tried(other, 'message-begun', begun(other, 7))).toContain('has-died');
  });
});
