/**
 * Reminders that go by themselves: planned, seen and approved once by a person, moved with the place, stopped at once by a death, a
 * no to all contact, another number, or one that did not arrive (common practice, no source).
 */
import { describe, expect, test } from 'vitest';
import { approvalFor, day, placesOf, remindersPlanned, whyNotByItself } from '@twelvemonth/clinical';
import { DayUnit } from './decide/a-day-unit.ts';

const days = [28, 7, 2] as const;
const session = 'thornbeck-2026-12-10';
const to = '07700 900123';
const way = { channel: 'text message', to } as const;
const why = { reason: 'transport', askedBy: 'the patient' } as const;

const placeOf = (unit: DayUnit): string => placesOf(unit.patient())[0]?.entry ?? 'none';
const approved = (unit: DayUnit) => ({ is: 'approved', place: placeOf(unit), ...way, daysBefore: [7, 2] });
function booked(): DayUnit {
  const unit = new DayUnit().at('2026-11-25T09:00:00.000Z').ready();
  unit.plan(session, '2026-12-10');
  unit.write('bettina', 'contact', { telephone: to, remindBy: ['text message'] });
  unit.expect('bettina', { name: 'book', patient: 'p1', session, place: 1 });
  unit.write('bettina', 'reminders-plan', approved(unit));
  return unit;
}
const holds = (unit: DayUnit): boolean => approvalFor(unit.patient(), placeOf(unit)) !== undefined;
const waits = (unit: DayUnit, daysBefore = 2, by: { channel: 'text message' | 'e-mail'; to: string } = way) => {
  const approval = approvalFor(unit.patient(), placeOf(unit));
  return approval === undefined ? 'not approved' : whyNotByItself(unit.patient(), approval, { daysBefore, ...by });
};
const begun = (unit: DayUnit, daysBefore: number) => ({
  ...way,
  place: placeOf(unit),
  daysBefore,
  text: 'you have a place',
  approval: approvalFor(unit.patient(), placeOf(unit))?.first ?? 'none',
});
const tried = (unit: DayUnit, kind: string, body: unknown): string[] =>
  unit.line('bettina', kind as 'call', body).map(({ name }) => name);

describe('planned', () => {
  const plan = (unit: DayUnit, on: string) =>
    remindersPlanned(unit.patient(), days, day(on))?.days.map(({ daysBefore }) => daysBefore);
  test('those still to come, the due one among them; not one from before the booking, nor one that went out', () => {
    const unit = booked();
    expect(plan(unit, '2026-11-25')).toEqual([7, 2]);
    expect(plan(unit, '2026-12-03')).toEqual([7, 2]);
    expect(plan(unit, '2026-12-08')).toEqual([2]);
    unit.at('2026-12-03T09:00:00.000Z').write('bettina', 'message-begun', begun(unit, 7));
    expect(plan(unit, '2026-12-03')).toEqual([2]);
    unit.write('imre', 'died', { source: 'family doctor' });
    expect(plan(unit, '2026-12-03')).toBeUndefined();
  });
});

describe('approved', () => {
  test('follows the place through moves and another time of the day; a place given up ends it, a new one is approved anew', () => {
    const unit = booked();
    unit.plan('later', '2026-12-17');
    unit.expect('bettina', { name: 'move', patient: 'p1', from: session, to: 'later', place: 1, ...why });
    expect(holds(unit)).toBe(true);
    const times = [{ patient: 'p1', arriveAt: '10:30' }];
    unit.expect('bettina', { name: 'tell times', session: 'later', times, reason: 'a chair less' });
    expect(holds(unit)).toBe(true);
    unit.expect('bettina', { name: 'give up place', patient: 'p1', session: 'later', ...why });
    unit.expect('bettina', { name: 'book', patient: 'p1', session, place: 1 });
    expect(holds(unit)).toBe(false);
  });
  test('stands for the days and the number that were seen', () => {
    const unit = booked();
    expect(waits(unit)).toBeUndefined();
    expect(waits(unit, 14)).toContain('not among those approved');
    expect(waits(unit, 2, { ...way, to: '07700 900555' })).toContain('has changed');
    expect(tried(unit, 'reminders-plan', { ...approved(unit), to: '07700 900555' })).toEqual(['field-wrong']);
    expect(tried(unit, 'reminders-plan', { ...approved(unit), channel: 'e-mail' })).toContain('no-contact-wanted');
  });
  test('may be taken back, once', () => {
    const unit = booked();
    const stopped = { is: 'stopped', reason: 'she comes in anyway' };
    unit.write('bettina', 'reminders-plan', stopped);
    expect(holds(unit)).toBe(false);
    expect(tried(unit, 'reminders-plan', stopped)).toEqual(['step-already-done']);
  });
});

describe('once', () => {
  test('nothing goes by an approval that does not hold, nor a second time', () => {
    const unit = booked().at('2026-12-03T09:00:00.000Z');
    expect(tried(unit, 'message-begun', { ...begun(unit, 7), approval: 'none' })).toEqual(['no-such-entry']);
    unit.write('bettina', 'message-begun', begun(unit, 7));
    expect(tried(unit, 'message-begun', begun(unit, 7))).toContain('step-already-done');
  });
  test('after one of which nobody knows, or that was refused or came back, a person looks and approves anew', () => {
    const unit = booked().at('2026-12-03T09:00:00.000Z');
    unit.write('bettina', 'message-begun', begun(unit, 7));
    const message = unit.newest('message-begun').id;
    expect(waits(unit)).toContain('somebody looks first');
    expect(tried(unit, 'message-begun', begun(unit, 2))).toEqual(['no-such-entry']);
    unit.write('bettina', 'message-ended', { outcome: 'accepted', message });
    expect(waits(unit)).toBeUndefined();
    unit.write('bettina', 'message-ended', { outcome: 'came back', message, because: 'number not in use' });
    expect(waits(unit)).toContain('somebody looks first');
    unit.write('bettina', 'reminders-plan', approved(unit));
    expect(waits(unit)).toBeUndefined();
  });
});
