/** Dates and moments as people here read them: in words, with the weekday, in the unit's own zone. */
import { dateWithWeekday, day, longDate, parseDay, parseShortDate, plainDate, shortDate } from '@twelvemonth/clinical';

/** "Fri 9 Oct 2026" */
export const dayInWords = (date: string): string => dateWithWeekday(day(date));

/** "between Mon 1 Dec 2026 and Fri 5 Dec 2026"; of a single day "on Mon 1 Dec 2026". */
export const betweenInWords = ({ from, until }: { readonly from: string; readonly until: string }): string =>
  from === until ? `on ${dayInWords(from)}` : `between ${dayInWords(from)} and ${dayInWords(until)}`;
/** "9 Oct 2026" */
export const shortDay = (date: string): string => shortDate(day(date));
/** A birth date in a list: "2 Jun 1941", or only what is known of it, as it is known. */
export const bornShort = (born: string): string => {
  const whole = parseDay(born);
  return whole === undefined ? born : shortDate(whole);
};
/** "Friday 9 October 2026" */
export const longDay = (date: string): string => longDate(day(date));

const inZone = (zone: string | undefined, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat =>
  new Intl.DateTimeFormat('en-GB', { ...options, ...(zone === undefined ? {} : { timeZone: zone }) });

/** "10:37" on the unit's wall. */
export const timeOfDay = (moment: string, zone?: string): string =>
  inZone(zone, { hour: '2-digit', minute: '2-digit' }).format(new Date(moment));

/** "Thu 26 Nov 2026, 10:37" on the unit's wall. */
export function momentInWords(moment: string, zone?: string): string {
  const parts = inZone(zone, { year: 'numeric', month: '2-digit', day: '2-digit' }).formatToParts(new Date(moment));
  const part = (type: string): string => parts.find((p) => p.type === type)?.value ?? '';
  return `${dayInWords(`${part('year')}-${part('month')}-${part('day')}`)}, ${timeOfDay(moment, zone)}`;
}

/** Which figure of a date comes first where it is typed. */
export type DateOrder = 'day first' | 'month first';

/**
 * Reads a date as it is typed at a desk: 28 1 2027, 28/1/27, 28.01.2027, 28 Jan 2027, 2027-01-28; Jan 28, 2027 too. Of figures
 * alone the first is the day, at a unit that writes American English the month; the other order is no date or is shown in words.
 * Two figures of a year mean this century, unless that lies more than a year ahead. Undefined: not a date that exists.
 */
export function readTypedDate(typed: string, today: string, order: DateOrder = 'day first'): string | undefined {
  const text = typed.trim();
  const iso = parseDay(text) ?? parseShortDate(text);
  if (iso !== undefined) return plainDate(iso);
  const words =
    /^(?<day>\d{1,2})[ ./-]?(?<month>[A-Za-z]{3,9})[ ./-]?(?<year>\d{4})$/.exec(text) ??
    /^(?<month>[A-Za-z]{3,9})[ ./-]?(?<day>\d{1,2})(?:, ?|[ ./-])(?<year>\d{4})$/.exec(text);
  if (words !== null) {
    const { day: dayTyped, month, year } = words.groups ?? {};
    const named = parseShortDate(`${dayTyped} ${month} ${year}`);
    return named === undefined ? undefined : plainDate(named);
  }
  const figures = /^(\d{1,2})[ ./-](\d{1,2})[ ./-](\d{2}|\d{4})$/.exec(text);
  if (figures === null) return undefined;
  const [, first = '', second = '', typedYear = ''] = figures;
  const [dayTyped, monthTyped] = order === 'day first' ? [first, second] : [second, first];
  const thisYear = Number(today.slice(0, 4));
  const near = 2000 + Number(typedYear);
  const year = typedYear.length === 4 ? typedYear : String(near > thisYear + 1 ? near - 100 : near);
  const found = parseDay(`${year}-${monthTyped.padStart(2, '0')}-${dayTyped.padStart(2, '0')}`);
  return found === undefined ? undefined : plainDate(found);
}

const asked: Readonly<Record<DateOrder, string>> = {
  'day first': 'Write day, month, year: 28 1 2027.',
  'month first': 'Write month, day, year: 1 28 2027.',
};

/** What is wrong with a date that cannot be read, with what was typed: a year that is missing is asked for, not completed. */
export const unreadableDate = (typed: string, order: DateOrder = 'day first'): string =>
  /^(?:\d{1,2}[ ./-]?(\d{1,2}|[A-Za-z]{3,9})|[A-Za-z]{3,9}[ ./-]?\d{1,2})[./-]?$/.test(typed.trim())
    ? `“${typed.trim()}” has no year. ${asked[order]}`
    : `“${typed.trim()}” is not a date that exists. ${asked[order]}`;
