/**
 * Calendar days as integers, so that the engine adds, compares and sorts dates without a clock, a zone or an allocation.
 * Day 0 is 1970-01-01 in the proleptic Gregorian calendar. The civil-date sums are the well-known era/day-of-era method;
 * tests hold them against Temporal over four centuries.
 *
 * Two rules of the service live here because databases and libraries disagree on them (see docs/safety/sources.md):
 * a yearly date counted from 29 February falls on 28 February; a birthday of 29 February is kept on 1 March.
 */
declare const dayBrand: unique symbol;
/** A calendar date: days since 1970-01-01. Never an instant, never in a time zone. */
export type Day = number & { readonly [dayBrand]: 'Day' };

declare const plainDateBrand: unique symbol;
/** A calendar date as text, `YYYY-MM-DD`. The form dates have at every boundary. */
export type PlainDate = string & { readonly [plainDateBrand]: 'PlainDate' };

export type CivilDate = { readonly year: number; readonly month: number; readonly dayOfMonth: number };

export function dayFromCivil(year: number, month: number, dayOfMonth: number): Day {
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + dayOfMonth - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return (era * 146097 + dayOfEra - 719468) as Day;
}

export function civilFromDay(day: Day): CivilDate {
  const z = day + 719468;
  const era = Math.floor(z / 146097);
  const dayOfEra = z - era * 146097;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36524) - Math.floor(dayOfEra / 146096)) / 365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const shiftedMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const dayOfMonth = dayOfYear - Math.floor((153 * shiftedMonth + 2) / 5) + 1;
  const month = shiftedMonth < 10 ? shiftedMonth + 3 : shiftedMonth - 9;
  return { year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, dayOfMonth };
}

const isLeapYear = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
const monthLengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

export function daysInMonth(year: number, month: number): number {
  return month === 2 && isLeapYear(year) ? 29 : (monthLengths[month - 1] ?? 0);
}

const NOUGHT = 48;
const HYPHEN = 45;

/** The digits of `text` in [from, until) as a number; NaN where one is no digit. Read by hand: ledgers are full of dates. */
function digits(text: string, from: number, until: number): number {
  let value = 0;
  for (let at = from; at < until; at += 1) {
    const digit = text.charCodeAt(at) - NOUGHT;
    if (!(digit >= 0 && digit <= 9)) return Number.NaN;
    value = value * 10 + digit;
  }
  return value;
}

/** Reads the `YYYY-MM-DD` that a text begins with, whatever follows; undefined if it is not a date that exists. */
export function parseDayAtStart(text: string): Day | undefined {
  if (text.charCodeAt(4) !== HYPHEN || text.charCodeAt(7) !== HYPHEN) return undefined;
  const year = digits(text, 0, 4);
  const month = digits(text, 5, 7);
  const dayOfMonth = digits(text, 8, 10);
  // Not a number compares with nothing, so that a letter among the digits fails here too.
  if (!(year >= 1800 && month >= 1 && month <= 12 && dayOfMonth >= 1 && dayOfMonth <= daysInMonth(year, month)))
    return undefined;
  return dayFromCivil(year, month, dayOfMonth);
}

/** Reads `YYYY-MM-DD`; undefined if the text is not a date that exists. */
export const parseDay = (text: string): Day | undefined => (text.length === 10 ? parseDayAtStart(text) : undefined);

/** Reads a date that is already known to exist (a parsed body, a literal in a test). Throws on anything else. */
export function day(text: string): Day {
  const parsed = parseDay(text);
  if (parsed === undefined) throw new RangeError(`not a calendar date: ${text}`);
  return parsed;
}

const two = (n: number): string => (n < 10 ? `0${n}` : String(n));

/** `YYYY-MM-DD` */
export function plainDate(value: Day): PlainDate {
  const { year, month, dayOfMonth } = civilFromDay(value);
  return `${year}-${two(month)}-${two(dayOfMonth)}` as PlainDate;
}

export const isPlainDate = (text: string): text is PlainDate => parseDay(text) !== undefined;

export const DAYS_A_WEEK = 7;

export function addDays(from: Day, days: number): Day {
  return (from + days) as Day;
}

/** Same day `months` later; where that month is shorter, its last day (29 February + 12 months = 28 February). */
export function addMonths(from: Day, months: number): Day {
  const { year, month, dayOfMonth } = civilFromDay(from);
  const index = year * 12 + (month - 1) + months;
  const toYear = Math.floor(index / 12);
  const toMonth = index - toYear * 12 + 1;
  return dayFromCivil(toYear, toMonth, Math.min(dayOfMonth, daysInMonth(toYear, toMonth)));
}

/** The birthday in `year`; someone born on 29 February has theirs on 1 March in other years. */
export const birthdayIn = (birth: Day, year: number): Day => birthdayOf(civilFromDay(birth), year);

/** The age on a day, and each birthday of its year and of the years up to another day's, ascending. */
export function ageAhead(
  birth: Day,
  on: Day,
  until: Day,
): { readonly age: number; readonly birthdays: readonly Day[] } {
  const born = civilFromDay(birth);
  const { year } = civilFromDay(on);
  const lastYear = civilFromDay(until).year;
  const first = birthdayOf(born, year);
  const birthdays = [first];
  for (let later = year + 1; later <= lastYear; later += 1) birthdays.push(birthdayOf(born, later));
  return { age: on >= first ? year - born.year : year - born.year - 1, birthdays };
}

function birthdayOf({ month, dayOfMonth }: CivilDate, year: number): Day {
  if (month === 2 && dayOfMonth === 29 && !isLeapYear(year)) return dayFromCivil(year, 3, 1);
  return dayFromCivil(year, month, dayOfMonth);
}

/** Whole years of age on a date. Negative before birth. */
export function ageOn(birth: Day, on: Day): number {
  const { year } = civilFromDay(on);
  const born = civilFromDay(birth);
  const years = year - born.year;
  return on >= birthdayOf(born, year) ? years : years - 1;
}

/** 1 = Monday ... 7 = Sunday (ISO 8601). */
export function weekday(value: Day): number {
  return ((((value + 3) % 7) + 7) % 7) + 1;
}

export const monthNames = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;
export const monthsInFull = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;
const weekdayNames = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;
const weekdaysInFull = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;

/** Dates already written: every cause and every line of a list names a few of the same dates. Days of 1970 to 2069, no others. */
const WRITTEN_DAYS = 36_525;
// Made at its length: an array that grows by leaps becomes a slow one.
const written: (string | undefined)[] = Array.from({ length: WRITTEN_DAYS });

/** "9 Oct 2026" */
export function shortDate(value: Day): string {
  const before = value >= 0 && value < WRITTEN_DAYS ? written[value] : undefined;
  if (before !== undefined) return before;
  const { year, month, dayOfMonth } = civilFromDay(value);
  const text = `${dayOfMonth} ${monthNames[month - 1]} ${year}`;
  if (value >= 0 && value < WRITTEN_DAYS) written[value] = text;
  return text;
}

/** "Fri 9 Oct 2026" */
export function dateWithWeekday(value: Day): string {
  return `${weekdayNames[weekday(value) - 1]} ${shortDate(value)}`;
}

/** "Friday 9 October 2026": how dates are written to patients and in headings. */
export function longDate(value: Day): string {
  const { year, month, dayOfMonth } = civilFromDay(value);
  return `${weekdaysInFull[weekday(value) - 1]} ${dayOfMonth} ${monthsInFull[month - 1]} ${year}`;
}

/** Reads "9 Oct 2026" (any case, month by its first three letters or in full); undefined if no such date. */
export function parseShortDate(text: string): Day | undefined {
  const match = /^(\d{1,2}) ([A-Za-z]{3,9}) (\d{4})$/.exec(text.trim());
  if (match === null) return undefined;
  const word = (match[2] ?? '').toLowerCase();
  const month =
    monthsInFull.findIndex((name) => name.toLowerCase() === word || name.slice(0, 3).toLowerCase() === word) + 1;
  const year = Number(match[3]);
  const dayOfMonth = Number(match[1]);
  if (month === 0 || year < 1800 || dayOfMonth < 1 || dayOfMonth > daysInMonth(year, month)) return undefined;
  return dayFromCivil(year, month, dayOfMonth);
}
