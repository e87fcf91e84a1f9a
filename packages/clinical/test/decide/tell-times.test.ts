/** People of a list told another time on the day: the list, their notes and their calendar say it; who is here keeps theirs. */
import { describe, expect, test } from 'vitest';
import { type Act, calendarPlaceOf, day, placeFrom, sessionOf } from '@twelvemonth/clinical';
import { DayUnit } from './a-day-unit.ts';

const session = 'thornbeck-2026-11-26';
const tell = (...times: readonly (readonly [patient: string, arriveAt: string])[]): Act => ({
  name: 'tell times',
  session,
  times: times.map(([patient, arriveAt]) => ({ patient, arriveAt })),
  reason: 'a chair was lost',
});
const listed = (unit: DayUnit) => sessionOf(unit.record(`session/${session}`));
const three = () => new DayUnit().booked('p1', 1).booked('p2', 2).booked('p3', 3).at('2026-11-26T08:00:00.000Z');
const timeOf = (unit: DayUnit, patient: string) => placeFrom(unit.patient(patient), day('2026-11-26'))?.arriveAt;

describe('told another time', () => {
  test('the list, the notes and the calendar say it; the others keep theirs', () => {
    const unit = three();
    const before = calendarPlaceOf(unit.patient('p2'), day('2026-11-26'));
    unit.expect('imre', tell(['p2', '10:15'], ['p3', '09:05']));
    expect(listed(unit)?.arriveAt).toEqual(['08:40', '10:15', '09:05']);
    expect([...(listed(unit)?.taken ?? [])].toSorted(([a], [b]) => a - b)).toEqual([
      [1, 'p1'],
      [2, 'p2'],
      [3, 'p3'],
    ]);
    expect(['p1', 'p2', 'p3'].map((patient) => timeOf(unit, patient))).toEqual(['08:40', '10:15', '09:05']);
    const after = calendarPlaceOf(unit.patient('p2'), day('2026-11-26'));
    expect([after?.first, after?.cancelled, after?.arriveAt]).toEqual([before?.first, false, '10:15']);
    expect(after!.sequence).toBeGreaterThan(before!.sequence);
  });

  test('the time goes with the person: who gets the place next comes at the time of the list', () => {
    const unit = three();
    unit.expect('imre', tell(['p2', '10:15']));
    unit.expect('bettina', { name: 'give up place', patient: 'p2', session, reason: 'ill', askedBy: 'the patient' });
    expect(listed(unit)?.arriveAt[1]).toBe('09:00');
  });

  test('a list planned anew keeps what people were told, and counts as unchanged the times it was planned with', () => {
    const unit = three();
    unit.expect('imre', tell(['p2', '10:15']));
    unit.plan(session, '2026-11-26');
    expect(listed(unit)?.arriveAt[1]).toBe('10:15');
  });

  test.each<[string, Act, string]>([
    ['not the time they have', tell(['p2', '09:00']), 'field-wrong'],
    ['not a time at which the unit is closed', tell(['p2', '17:30']), 'field-wrong'],
    ['not the same person twice', tell(['p2', '10:15'], ['p2', '10:20']), 'field-wrong'],
    ['not who has no place there', tell(['p4', '10:15']), 'unknown-patient'],
  ])('%s', (_, act, name) => {
    expect(three().refused('imre', act)).toContain(name);
  });

  test('not who has arrived: what has begun stays, and then nobody is told anything', () => {
    const unit = three();
    unit.arrive('p2');
    expect(unit.refused('imre', tell(['p2', '10:15'], ['p3', '10:20']))).toContain('already-here');
    expect(timeOf(unit, 'p3')).toBe('09:20');
  });

  test('not after the day, and not by somebody outside care', () => {
    const unit = three();
    expect(unit.refused('edwin', tell(['p2', '10:15']))).toContain('not-yours-to-do');
    unit.at('2026-11-27T08:00:00.000Z');
    expect(unit.refused('imre', tell(['p2', '10:15']))).toContain('session-past');
  });
});
