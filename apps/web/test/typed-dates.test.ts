/** Dates as a nurse types them at a desk. Checked against Temporal, the language's own calendar. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bornShort, momentInWords, readTypedDate, unreadableDate } from '../src/words/dates.ts';

const today = '2026-11-26';

describe('a typed date is read day first', () => {
  test.each([
    ['28 1 2027', '2027-01-28'],
    ['28/1/27', '2027-01-28'],
    ['28.01.2027', '2027-01-28'],
    ['28-1-2027', '2027-01-28'],
    ['28 Jan 2027', '2027-01-28'],
    ['28jan2027', '2027-01-28'],
    ['2027-01-28', '2027-01-28'],
    ['  3 9 2026 ', '2026-09-03'],
  ])('%s', (typed, date) => {
    expect(readTypedDate(typed, today)).toBe(date);
  });

  test('two figures of a year mean this century unless that lies more than a year ahead', () => {
    expect(readTypedDate('1 6 27', today)).toBe('2027-06-01');
    expect(readTypedDate('1 6 28', today)).toBe('1928-06-01');
    expect(readTypedDate('2 6 41', today)).toBe('1941-06-02');
  });

  test.each(['31 2 2027', '29 2 2027', '0 1 2027', '1 13 2027', 'tomorrow', '2027', '1/2', ''])(
    '%s is no date and is never bent into one',
    (typed) => {
      expect(readTypedDate(typed, today)).toBeUndefined();
    },
  );

  test('every day of two centuries is read back from its figures', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 73_000 }), fc.constantFrom(' ', '/', '.', '-'), (days, sign) => {
        const date = Temporal.PlainDate.from('1900-01-01').add({ days });
        expect(readTypedDate([date.day, date.month, date.year].join(sign), today)).toBe(date.toString());
      }),
      { seed: 26, numRuns: 300 },
    );
  });
});

describe('at a unit that writes American a date in figures begins with the month', () => {
  const there = (typed: string) => readTypedDate(typed, today, 'month first');
  test.each([
    ['1 28 2027', '2027-01-28'],
    ['1/28/27', '2027-01-28'],
    ['3/4/1944', '1944-03-04'],
    ['Jan 28, 2027', '2027-01-28'],
    ['Jan 28 2027', '2027-01-28'],
    ['28 Jan 2027', '2027-01-28'],
    ['2027-01-28', '2027-01-28'],
  ])('%s', (typed, date) => expect(there(typed)).toBe(date));
  test('a day typed first is no date there, as a month typed first is none elsewhere: it is asked about', () => {
    expect(there('28 1 2027')).toBeUndefined();
    expect(readTypedDate('1 28 2027', today)).toBeUndefined();
    expect(unreadableDate('28 1 2027', 'month first')).toBe(
      '“28 1 2027” is not a date that exists. Write month, day, year: 1 28 2027.',
    );
    expect(unreadableDate('Jan 28', 'month first')).toBe('“Jan 28” has no year. Write month, day, year: 1 28 2027.');
  });
  test('a month written in letters is read in either order everywhere', () => {
    expect(readTypedDate('Jan 28, 2027', today)).toBe('2027-01-28');
  });
  test('every day of two centuries is read back from its figures', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 73_000 }), fc.constantFrom(' ', '/', '.', '-'), (days, sign) => {
        const date = Temporal.PlainDate.from('1900-01-01').add({ days });
        expect(there([date.month, date.day, date.year].join(sign))).toBe(date.toString());
      }),
      { seed: 26, numRuns: 300 },
    );
  });
});

test('a birth date of which only the year is known stays a year', () => {
  expect(bornShort('1941-06-02')).toBe('2 Jun 1941');
  expect(bornShort('1941')).toBe('1941');
});

test('a moment is told on the wall of the unit, summer and winter', () => {
  expect(momentInWords('2026-07-01T23:30:00Z', 'Europe/London')).toBe('Thu 2 Jul 2026, 00:30');
  expect(momentInWords('2026-12-01T23:30:00Z', 'Europe/London')).toBe('Tue 1 Dec 2026, 23:30');
});

describe('a date that cannot be read', () => {
  test.each(['28 1', '28/1', '28 Jan', '28jan', '28.1.'])(
    '%s has no year: it is asked for, with what was typed',
    (typed) => {
      expect(readTypedDate(typed, today)).toBeUndefined();
      expect(unreadableDate(typed)).toBe(`“${typed}” has no year. Write day, month, year: 28 1 2027.`);
    },
  );
  test('another is shown as it was typed', () => {
    expect(unreadableDate('31 2 2027')).toContain('“31 2 2027” is not a date that exists');
  });
});
