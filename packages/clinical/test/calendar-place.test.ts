/** One event of a calendar from the first booking to the visit (RFC 5546: the same UID, SEQUENCE rising with each change). */
import { expect, test } from 'vitest';
import { calendarPlaceOf, day } from '@twelvemonth/clinical';
import { DayUnit } from './decide/a-day-unit.ts';

const now = (unit: DayUnit) => calendarPlaceOf(unit.patient(), day(unit.today()));
const first = 'thornbeck-2026-11-26';
const second = 'thornbeck-2026-12-01';

test('a move keeps the event and raises its number; giving the place up cancels it; a new place brings it back', () => {
  const unit = new DayUnit().ready();
  expect(now(unit)).toBeUndefined();
  unit.expect('bettina', { name: 'book', patient: 'p1', session: first, place: 1 });
  const booked = now(unit);
  expect(booked).toMatchObject({ sequence: 0, on: day('2026-11-26'), arriveAt: '08:40', cancelled: false });
  const why = { reason: 'transport', askedBy: 'the patient' } as const;
  unit.expect('bettina', { name: 'move', patient: 'p1', from: first, to: second, place: 2, ...why });
  const moved = now(unit);
  expect(moved).toMatchObject({ first: booked?.first, on: day('2026-12-01'), arriveAt: '09:00', cancelled: false });
  expect(moved?.sequence).toBeGreaterThan(0);
  unit.expect('bettina', { name: 'give up place', patient: 'p1', session: second, ...why });
  const cancelled = now(unit);
  expect(cancelled).toMatchObject({ first: booked?.first, on: day('2026-12-01'), cancelled: true });
  expect(cancelled?.sequence).toBeGreaterThan(moved?.sequence ?? 0);
  unit.expect('bettina', { name: 'book', patient: 'p1', session: first, place: 3 });
  expect(now(unit)).toMatchObject({ first: booked?.first, on: day('2026-11-26'), cancelled: false });
  expect(now(unit)?.sequence).toBeGreaterThan(cancelled?.sequence ?? 0);
});

test('what is past is told no more', () => {
  const unit = new DayUnit().ready();
  unit.expect('bettina', { name: 'book', patient: 'p1', session: first, place: 1 });
  expect(calendarPlaceOf(unit.patient(), day('2026-11-27'))).toBeUndefined();
});
