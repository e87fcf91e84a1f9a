import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, test } from 'vitest';
import {
  type Day,
  addDays,
  addMonths,
  ageAhead,
  ageOn,
  birthdayIn,
  civilFromDay,
  day,
  dayFromCivil,
  everyDay,
  firstBloodDay,
  isPlainDate,
  lastDrawFor,
  parseDay,
  parsePartialDate,
  parseShortDate,
  plainDate,
  shortDate,
  usableFrom,
  weekday,
} from '@twelvemonth/clinical';

const seed = 20261125;
const runs = { seed, numRuns: 2000 };
/** Four centuries: both kinds of century year, every leap rule. */
const anyDay = fc.integer({ min: dayFromCivil(1800, 1, 1), max: dayFromCivil(2199, 12, 31) }).map((n) => n as Day);
const temporal = (value: Day): Temporal.PlainDate => Temporal.PlainDate.from(plainDate(value));
const luxon = (value: Day): DateTime => DateTime.fromISO(plainDate(value), { zone: 'utc' });

// Temporal: ECMAScript's own calendar, native in the pinned Node. luxon 3: an independent library.
describe('days, against Temporal and luxon', () => {
  test('a day and its civil date say the same, and come back', () => {
    fc.assert(
      fc.property(anyDay, (value) => {
        const { year, month, dayOfMonth } = civilFromDay(value);
        const theirs = Temporal.PlainDate.from('1970-01-01').add({ days: value });
        expect([year, month, dayOfMonth]).toEqual([theirs.year, theirs.month, theirs.day]);
        expect(dayFromCivil(year, month, dayOfMonth)).toBe(value);
        expect(plainDate(value)).toBe(theirs.toString());
        expect(day(plainDate(value))).toBe(value);
      }),
      runs,
    );
  });

  test('weekdays', () => {
    fc.assert(
      fc.property(anyDay, (value) => {
        expect(weekday(value)).toBe(temporal(value).dayOfWeek);
        expect(weekday(value)).toBe(luxon(value).weekday);
      }),
      runs,
    );
  });

  test('so many months later, held at the end of a shorter month', () => {
    fc.assert(
      fc.property(anyDay, fc.integer({ min: -48, max: 48 }), (value, months) => {
        expect(plainDate(addMonths(value, months))).toBe(temporal(value).add({ months }).toString());
        expect(plainDate(addMonths(value, months))).toBe(luxon(value).plus({ months }).toISODate());
      }),
      runs,
    );
  });

  test('days added', () => {
    fc.assert(
      fc.property(anyDay, fc.integer({ min: -2000, max: 2000 }), (value, days) => {
        expect(plainDate(addDays(value, days))).toBe(temporal(value).add({ days }).toString());
      }),
      runs,
    );
  });

  test('age in whole years, as Temporal counts it', () => {
    fc.assert(
      fc.property(anyDay, fc.integer({ min: 0, max: 40_000 }), (birth, later) => {
        const on = addDays(birth, later);
        expect(ageOn(birth, on)).toBe(temporal(birth).until(temporal(on), { largestUnit: 'years' }).years);
      }),
      runs,
    );
  });

  test('age on a day with the birthdays ahead: on each of them one year older than the day before', () => {
    fc.assert(
      fc.property(
        anyDay,
        fc.integer({ min: 0, max: 40_000 }),
        fc.integer({ min: 0, max: 900 }),
        (birth, later, ahead) => {
          const on = addDays(birth, later);
          const until = addDays(on, ahead);
          const { age, birthdays } = ageAhead(birth, on, until);
          expect(age).toBe(ageOn(birth, on));
          for (const birthday of birthdays)
            expect(ageOn(birth, birthday)).toBe(ageOn(birth, addDays(birthday, -1)) + 1);
          expect(ageOn(birth, until)).toBe(age + birthdays.filter((one) => one > on && one <= until).length);
        },
      ),
      runs,
    );
  });

  test('age for people born on 29 February, on every day of eight years', () => {
    const birth = day('1940-02-29');
    for (let on = day('2019-01-01'); on <= day('2026-12-31'); on = addDays(on, 1)) {
      expect(ageOn(birth, on)).toBe(temporal(birth).until(temporal(on), { largestUnit: 'years' }).years);
    }
  });
});

describe('the two rules on which libraries and databases differ', () => {
  // clinical.md 8, date arithmetic tests (computed): 2024-02-29 + 12 months -> 2025-02-28, and the others.
  test.each([
    ['2024-02-29', 12, '2025-02-28'],
    ['2025-08-31', 6, '2026-02-28'],
    ['2025-01-31', 18, '2026-07-31'],
    ['2026-01-15', 6, '2026-07-15'],
    ['2025-02-28', 12, '2026-02-28'],
  ])('%s and %i months is %s', (from, months, to) => {
    expect(plainDate(addMonths(day(from), months))).toBe(to);
  });

  test('a birthday of 29 February is kept on 1 March, and on 29 February where there is one', () => {
    const birth = day('1944-02-29');
    expect(plainDate(birthdayIn(birth, 2027))).toBe('2027-03-01');
    expect(plainDate(birthdayIn(birth, 2028))).toBe('2028-02-29');
    expect(ageOn(birth, day('2027-02-28'))).toBe(82);
    expect(ageOn(birth, day('2027-03-01'))).toBe(83);
  });
});

describe('reading dates', () => {
  test.each(['2026-02-29', '2026-13-01', '2026-00-10', '2026-04-31', '26-04-30', '2026-4-3', '1799-12-31', ''])(
    '%s is no date',
    (text) => {
      expect(parseDay(text)).toBeUndefined();
      expect(isPlainDate(text)).toBe(false);
    },
  );

  test('every valid day reads back from its short form', () => {
    fc.assert(
      fc.property(anyDay, (value) => parseShortDate(shortDate(value)) === value),
      runs,
    );
  });

  test('a partial birth date keeps what is known and completes nothing', () => {
    expect(parsePartialDate('1941')).toEqual({ precision: 'year', year: 1941 });
    expect(parsePartialDate('1941-06')).toEqual({ precision: 'month', year: 1941, month: 6 });
    expect(parsePartialDate('1941-06-02')).toEqual({ precision: 'day', day: day('1941-06-02') });
    expect(parsePartialDate('1941-13')).toBeUndefined();
    expect(parsePartialDate('1941-02-30')).toBeUndefined();
  });
});

describe('blood days and results', () => {
  const weekdaysOnly = {
    ...everyDay,
    bloodWeekdays: [1, 2, 3, 4, 5],
    closedDays: [day('2026-12-25'), day('2026-12-28')],
  };
  const twoWorkingDays = { days: 2, counted: 'working days' } as const;

  test('Christmas: a sample of 24 December is usable after two days on which the laboratory works', () => {
    expect(plainDate(usableFrom(weekdaysOnly, day('2026-12-24'), twoWorkingDays))).toBe('2026-12-30');
    expect(plainDate(firstBloodDay(weekdaysOnly, day('2026-12-25')) ?? day('1900-01-01'))).toBe('2026-12-29');
  });

  test('the last draw for a date is the last one whose result is in by then', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: day('2026-01-01'), max: day('2027-12-31') }),
        fc.integer({ min: 0, max: 6 }),
        (n, days) => {
          const needed = n as Day;
          const result = { days, counted: 'working days' } as const;
          const last = lastDrawFor(weekdaysOnly, needed, result);
          expect(last).toBeDefined();
          if (last === undefined) return;
          expect(usableFrom(weekdaysOnly, last, result)).toBeLessThanOrEqual(needed);
          const next = firstBloodDay(weekdaysOnly, addDays(last, 1));
          expect(next === undefined || usableFrom(weekdaysOnly, next, result) > needed || next > needed).toBe(true);
        },
      ),
      { seed, numRuns: 500 },
    );
  });
});
