/** Bookings that go with a place (hazard 90; common practice, no other source): asked from the needs, left behind by a move. */
import { supportLinesFor, supportsLeftBehind, supportsNeeded, placesOf, taskRows } from '@twelvemonth/clinical';
import { describe, expect, test } from 'vitest';
import { DayUnit } from './a-day-unit.ts';

const first = 'thornbeck-2026-11-26';
const second = 'thornbeck-2026-12-01';

/** Booked for Thursday at 08:40; brought by transport, moved by a hoist. */
function booked(): DayUnit {
  const unit = new DayUnit().booked();
  unit.write('bettina', 'contact', { needs: ['hospital transport', 'hoist'], language: 'Polish' });
  return unit;
}
const today = (unit: DayUnit) => unit.surroundings({ staff: 'dana', role: 'nurse' }).today;
const place = (unit: DayUnit) => {
  const [found] = placesOf(unit.patient());
  if (found === undefined) throw new Error('no place');
  return found;
};
const states = (unit: DayUnit): string[] =>
  supportLinesFor(unit.patient(), place(unit)).map(({ what, state }) => `${what}: ${state}`);
const tasks = (unit: DayUnit): string[] =>
  taskRows(unit.patient(), undefined, today(unit))
    .filter(({ columns }) => String(columns['task']).includes('book') || String(columns['task']).includes('goes with'))
    .map(({ columns }) => `${String(columns['task'])} (${String(columns['detail'])})`);
function transport(unit: DayUnit, inPlaceOf?: string): void {
  const { session, arriveAt } = place(unit);
  unit.write('bettina', 'support-booking', {
    answer: 'booked',
    what: 'transport',
    session,
    on: session.slice(-10),
    arriveAt,
    bookedWith: 'transport desk',
    ...(inPlaceOf === undefined ? {} : { inPlaceOf }),
  });
}
const move = (unit: DayUnit): void =>
  unit.expect('bettina', {
    name: 'move',
    patient: 'p1',
    from: first,
    to: second,
    place: 1,
    reason: 'away',
    askedBy: 'the patient',
  });

describe('what a place asks for', () => {
  test('transport and hoist by their needs, an interpreter by their language', () => {
    expect(supportsNeeded(booked().patient())).toEqual(['transport', 'interpreter', 'hoist']);
  });

  test('stands to be arranged until it is booked, or said not to be needed with a reason', () => {
    const unit = booked();
    expect(tasks(unit)).toEqual([
      'arrange what goes with the place (transport, interpreter and hoist for 26 Nov 2026)',
    ]);
    transport(unit);
    unit.write('bettina', 'support-booking', {
      answer: 'not needed',
      what: 'interpreter',
      session: first,
      reason: 'speaks English at work',
    });
    expect(states(unit)).toEqual(['transport: booked', 'interpreter: not needed', 'hoist: to arrange']);
    expect(tasks(unit)).toEqual(['arrange what goes with the place (hoist for 26 Nov 2026)']);
  });

  test('nothing more is booked for who goes to another service: the place is to be given up', () => {
    const unit = booked();
    unit.write('dana', 'transfer-out', { to: 'another bone unit', chaseOn: '2026-12-15' });
    expect(tasks(unit)).toEqual([]);
  });

  test('nothing is booked for a place they do not have', () => {
    const unit = booked();
    const body = { answer: 'booked', what: 'hoist', session: first, on: '2026-11-26', bookedWith: 'ward 4' };
    expect(unit.line('bettina', 'support-booking', { ...body, arriveAt: '09:00' }).map(({ name }) => name)).toEqual([
      'field-wrong',
    ]);
    expect(unit.line('bettina', 'support-booking', { ...body, session: second, arriveAt: '08:40' })).not.toEqual([]);
  });
});

describe('when the place moves or is given up', () => {
  test('the booking is to be moved, and stays so until another one takes its place', () => {
    const unit = booked();
    transport(unit);
    move(unit);
    expect(supportsLeftBehind(unit.patient(), today(unit)).map(({ moveTo }) => moveTo?.session)).toEqual([second]);
    expect(tasks(unit)).toContain('move or cancel what was booked (transport of 26 Nov 2026: move to 1 Dec 2026)');
    expect(states(unit)).toContain('transport: to arrange');
    transport(unit, unit.newest('support-booking').id);
    expect(supportsLeftBehind(unit.patient(), today(unit))).toEqual([]);
    expect(states(unit)).toContain('transport: booked');
  });

  test('another time on the same list leaves it behind too', () => {
    const unit = booked();
    transport(unit);
    unit.expect('bettina', {
      name: 'move',
      patient: 'p1',
      from: first,
      to: first,
      place: 3,
      reason: 'later bus',
      askedBy: 'the patient',
    });
    expect(supportsLeftBehind(unit.patient(), today(unit))).toHaveLength(1);
  });

  test.each<[string, (unit: DayUnit) => void]>([
    ['given up', () => undefined],
    ['given up, and the day has passed', (unit) => void unit.at('2026-11-28T09:00:00.000Z')],
    ['given up after a death', (unit) => unit.write('bettina', 'died', { source: 'family' })],
  ])('%s: it is to be cancelled, until it is', (_, later) => {
    const unit = booked();
    transport(unit);
    unit.expect('bettina', {
      name: 'give up place',
      patient: 'p1',
      session: first,
      reason: 'not now',
      askedBy: 'the patient',
    });
    later(unit);
    expect(tasks(unit)).toEqual(['move or cancel what was booked (transport of 26 Nov 2026: cancel)']);
    unit.write('bettina', 'support-booking', {
      answer: 'cancelled',
      booking: unit.newest('support-booking').id,
      toldWhom: 'transport desk, Kim',
    });
    expect(tasks(unit)).toEqual([]);
  });
});

describe('two clerks at once', () => {
  const booking = (unit: DayUnit, more: object = {}) => {
    const { session, arriveAt } = place(unit);
    const body = {
      answer: 'booked',
      what: 'transport',
      session,
      on: session.slice(-10),
      arriveAt,
      bookedWith: 'transport desk',
      ...more,
    };
    return unit.line('bettina', 'support-booking', body);
  };

  test('the same car booked twice for one place is asked about', () => {
    const unit = booked();
    expect(booking(unit, { at: '08:00' })).toEqual([]);
    expect(booking(unit)).toMatchObject([
      {
        name: 'is-it-right',
        says: expect.stringMatching(/transport is booked for that day already, with transport desk at 08:00/),
      },
    ]);
  });

  test('a car that comes after they are to be there is asked about', () =>
    expect(booking(booked(), { at: '17:40' })).toMatchObject([
      { name: 'is-it-right', says: expect.stringMatching(/at 17:40, after they are to arrive at 08:40/) },
    ]));

  test('what one has moved the other does not move or cancel again, nor with something of another sort', () => {
    const unit = booked();
    transport(unit);
    const car = unit.newest('support-booking').id;
    move(unit);
    expect(booking(unit, { what: 'hoist', inPlaceOf: car })).toMatchObject([
      { name: 'field-wrong', field: 'line.body.inPlaceOf' },
    ]);
    transport(unit, car);
    expect(booking(unit, { inPlaceOf: car }).map(({ name }) => name)).toContain('field-wrong');
    const cancel = { answer: 'cancelled', booking: car, toldWhom: 'transport desk' };
    expect(unit.line('bettina', 'support-booking', cancel)).toMatchObject([
      { name: 'field-wrong', says: expect.stringMatching(/moved or cancelled already/) },
    ]);
  });
});
