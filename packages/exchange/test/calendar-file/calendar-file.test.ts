/**
 * Calendar files, read back by two parsers that share no code: ical.js 2.2.1 (MPL-2.0) and ts-ics 2.4.6 (MIT). What the file
 * must hold: RFC 5545 3.1 (folding), 3.3.11 (escapes), 3.6.5 (zones), 3.8.7.4 (SEQUENCE); RFC 5546 3.2.5 (CANCEL). The instants
 * of 27 and 30 March 2026 in London: references 2.5.
 */
import fc from 'fast-check';
import ICAL from 'ical.js';
import { convertIcsCalendar } from 'ts-ics';
import { describe, expect, test } from 'vitest';
import type { PlainDate } from '@twelvemonth/clinical';
import { type CalendarPlace, calendarFile } from '@twelvemonth/exchange';

const place: CalendarPlace = {
  uid: 'e7f3-41@twelvemonth',
  // ts-ics takes a SEQUENCE of 0 for none.
  sequence: 1,
  madeAt: '2026-03-01T09:00:00.123Z',
  cancelled: false,
  on: '2026-03-30' as PlainDate,
  at: '09:30',
  minutes: 95,
  zone: 'Europe/London',
  summary: 'Visit, Thornbeck Day Unit',
  where: 'Thornbeck Day Unit, 4 Weir Lane; Thornbeck',
  says: 'Ring 01632 960100 if you cannot come.\nBring Siân’s café card and a list of all that you take, please, the whole of it.',
};

/** As ical.js reads it, with only the zones the file brings. */
function first(file: string) {
  ICAL.TimezoneService.reset();
  const calendar = new ICAL.Component(ICAL.parse(file));
  for (const zone of calendar.getAllSubcomponents('vtimezone')) ICAL.TimezoneService.register(new ICAL.Timezone(zone));
  const event = new ICAL.Event(calendar.getFirstSubcomponent('vevent') ?? undefined);
  return {
    method: calendar.getFirstPropertyValue('method'),
    uid: event.uid,
    sequence: event.sequence,
    start: event.startDate.toJSDate().toISOString(),
    end: event.endDate.toJSDate().toISOString(),
    summary: event.summary,
    where: event.location,
    says: event.description,
    status: event.component.getFirstPropertyValue('status'),
  };
}
function second(file: string) {
  const calendar = convertIcsCalendar(undefined, file);
  const [event] = calendar.events ?? [];
  return {
    method: calendar.method,
    uid: event?.uid,
    sequence: event?.sequence,
    start: event?.start.date.toISOString(),
    end: event !== undefined && 'end' in event ? event.end?.date.toISOString() : undefined,
    summary: event?.summary,
    where: event?.location,
    says: event?.description,
    status: event?.status,
  };
}

describe('both parsers read what was written', () => {
  test.each([
    ['after the clocks went forward', '2026-03-30', '09:30', 'Europe/London', '2026-03-30T08:30:00.000Z'],
    ['before it', '2026-03-27', '09:30', 'Europe/London', '2026-03-27T09:30:00.000Z'],
    ['in autumn', '2026-10-26', '09:30', 'Europe/London', '2026-10-26T09:30:00.000Z'],
    // Eastern time, 5 hours behind UTC in winter and 4 in summer.
    ['across the ocean', '2026-12-03', '13:40', 'America/New_York', '2026-12-03T18:40:00.000Z'],
    ['there in summer', '2026-07-03', '13:40', 'America/New_York', '2026-07-03T17:40:00.000Z'],
    // No change of clocks: one offset, +05:30.
    ['where clocks never change', '2026-07-03', '10:00', 'Asia/Kolkata', '2026-07-03T04:30:00.000Z'],
  ])('%s: %s %s in %s', (_, on, at, zone, start) => {
    const file = calendarFile({ ...place, on: on as PlainDate, at, zone });
    const end = new Date(Date.parse(start) + 95 * 60_000).toISOString();
    const written = {
      method: 'PUBLISH',
      uid: place.uid,
      sequence: 1,
      start,
      end,
      summary: place.summary,
      where: place.where,
      says: place.says,
      status: 'CONFIRMED',
    };
    expect(first(file)).toEqual(written);
    expect(second(file)).toEqual(written);
  });
  test('a cancellation has the same UID and a higher SEQUENCE', () => {
    const file = calendarFile({ ...place, cancelled: true, sequence: 2 });
    for (const read of [first(file), second(file)])
      expect(read).toMatchObject({ method: 'CANCEL', status: 'CANCELLED', sequence: 2, uid: place.uid });
  });
});

test('any words come back as they were, in lines of 75 octets at most, each ended as the standard says', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', minLength: 1, maxLength: 120 }), (typed) => {
      const says = typed.replaceAll(/\p{Cc}/gu, ' ').trim();
      fc.pre(says !== '');
      const file = calendarFile({ ...place, says });
      for (const line of file.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
      expect(file.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
      expect(first(file).says).toBe(says);
    }),
    { numRuns: 60 },
  );
});
