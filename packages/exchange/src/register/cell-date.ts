/**
 * A date as people write it in a register. One reading or none: a text that could be two dates stays two dates, a year
 * alone stays a year, a spreadsheet's day number is not turned into a date.
 */
import { type Day, ageOn, civilFromDay, dayFromCivil, daysInMonth, monthsInFull } from '@twelvemonth/clinical';
import type { DateOrder } from './mapping.ts';
import { plausibleAge } from './plausible.ts';

/** What the date is of: two figures of a year are read differently for births. */
export type DateUse = 'birth' | 'event';

export type DateRead =
  | { readonly read: 'date'; readonly day: Day; readonly twoFigureYear: boolean }
  /** Only a year, or a year and a month: `1941`, `1941-06`. */
  | { readonly read: 'part'; readonly text: string; readonly twoFigureYear: boolean }
  | { readonly read: 'two dates'; readonly first: Day; readonly second: Day }
  | { readonly read: 'no such date' }
  /** A spreadsheet's count of days, and what it would be in the usual count. */
  | { readonly read: 'day number'; readonly day: Day }
  | { readonly read: 'not a date' };

export type DateHabit = { readonly order: DateOrder; readonly use: DateUse; readonly today: Day };

const monthWords = monthsInFull.map((month) => month.toLowerCase());
const monthOf = (word: string): number | undefined => {
  const lower = word.toLowerCase();
  const index =
    lower.length < 3
      ? -1
      : monthWords.findIndex((month) => month.startsWith(lower) || (lower === 'sept' && month === 'september'));
  return index < 0 ? undefined : index + 1;
};

/**
 * The century of a year of two figures. A birth: the one that makes the person neither too young nor too old for the
 * service. Anything else: the 2000s, unless that lies more than five years ahead.
 */
function fullYear(figures: string, habit: DateHabit): number | undefined {
  const year = Number(figures);
  if (figures.length === 4) return year;
  const now = civilFromDay(habit.today).year;
  if (habit.use === 'event') return 2000 + year <= now + 5 ? 2000 + year : 1900 + year;
  return [1900 + year, 2000 + year].find(
    (candidate) => now - candidate >= plausibleAge.least && now - candidate <= plausibleAge.most,
  );
}

const dayOf = (year: number | undefined, month: number, dayOfMonth: number): Day | undefined =>
  year === undefined ||
  year < 1800 ||
  month < 1 ||
  month > 12 ||
  dayOfMonth < 1 ||
  dayOfMonth > daysInMonth(year, month)
    ? undefined
    : dayFromCivil(year, month, dayOfMonth);

function whole(year: string, month: number, dayOfMonth: number, habit: DateHabit): DateRead {
  const day = dayOf(fullYear(year, habit), month, dayOfMonth);
  return day === undefined ? { read: 'no such date' } : { read: 'date', day, twoFigureYear: year.length === 2 };
}

function part(year: string, month: number | undefined, habit: DateHabit): DateRead {
  const inFull = fullYear(year, habit);
  if (inFull === undefined || inFull < 1800 || (month !== undefined && (month < 1 || month > 12)))
    return { read: 'no such date' };
  const text = month === undefined ? String(inFull) : `${inFull}-${String(month).padStart(2, '0')}`;
  return { read: 'part', text, twoFigureYear: year.length === 2 };
}

/** Three figures with the year last (or, in a file that puts it first, first with two figures). */
function inFigures(a: string, b: string, c: string, habit: DateHabit): DateRead {
  if (habit.order === 'year month day' && c.length === 2 && a.length === 2)
    return whole(a, Number(b), Number(c), habit);
  if (habit.order === 'day month year') return whole(c, Number(b), Number(a), habit);
  if (habit.order === 'month day year') return whole(c, Number(a), Number(b), habit);
  const dayFirst = whole(c, Number(b), Number(a), habit);
  const monthFirst = whole(c, Number(a), Number(b), habit);
  if (dayFirst.read !== 'date') return monthFirst;
  if (monthFirst.read !== 'date' || monthFirst.day === dayFirst.day) return dayFirst;
  return { read: 'two dates', first: dayFirst.day, second: monthFirst.day };
}

const spreadsheetDayZero = dayFromCivil(1899, 12, 30);

/** Reads a cell. An empty cell is the caller's to notice. */
export function readDate(cell: string, habit: DateHabit): DateRead {
  const text = cell
    .trim()
    .replace(/[T ]\d{1,2}:\d{2}(?::\d{2}(?:\.\d+)?)?(?:\s*[AaPp][Mm])?(?:Z|[+-]\d{2}:?\d{2})?$/, '')
    .replace(/^(?:mon|tue|wed|thu|fri|sat|sun)[a-z]*[.,]?\s+/i, '')
    .trim();
  let match = /^(\d{4})[-/. ](\d{1,2})[-/. ](\d{1,2})$/.exec(text) ?? /^((?:19|20)\d{2})(\d{2})(\d{2})$/.exec(text);
  if (match !== null) return whole(match[1] ?? '', Number(match[2]), Number(match[3]), habit);
  match = /^(\d{1,2})\s?[-/. ]\s?(\d{1,2})\s?[-/. ]\s?(\d{4}|\d{2})$/.exec(text);
  if (match !== null) return inFigures(match[1] ?? '', match[2] ?? '', match[3] ?? '', habit);
  match = /^(\d{1,2})(?:st|nd|rd|th)?[-/. ]*([a-z]{3,9})[.,]?[-/. ]*'?(\d{4}|\d{2})$/i.exec(text);
  if (match !== null) return withMonthWord(match[2], match[1], match[3], habit);
  match = /^([a-z]{3,9})\.?[-/. ]*(\d{1,2})(?:st|nd|rd|th)?,?[-/. ]+(\d{4})$/i.exec(text);
  if (match !== null) return withMonthWord(match[1], match[2], match[3], habit);
  match = /^([a-z]{3,9})\.?[-/. ]*'?(\d{4}|\d{2})$/i.exec(text);
  if (match !== null) return withMonthWord(match[1], undefined, match[2], habit);
  match = /^(\d{1,2})[-/.](\d{4})$/.exec(text);
  if (match !== null) return part(match[2] ?? '', Number(match[1]), habit);
  match = /^(\d{4})-(\d{2})$/.exec(text);
  if (match !== null) return part(match[1] ?? '', Number(match[2]), habit);
  if (/^(?:18|19|20)\d{2}$/.test(text)) return part(text, undefined, habit);
  if (/^\d{5}$/.test(text)) return { read: 'day number', day: (spreadsheetDayZero + Number(text)) as Day };
  return { read: 'not a date' };
}

function withMonthWord(
  word: string | undefined,
  dayText: string | undefined,
  year: string | undefined,
  habit: DateHabit,
): DateRead {
  const month = monthOf(word ?? '');
  if (month === undefined) return { read: 'not a date' };
  return dayText === undefined ? part(year ?? '', month, habit) : whole(year ?? '', month, Number(dayText), habit);
}

/** Which orders of day and month a date in figures can have at all; undefined if it does not tell (or is no such date). */
export function orderTold(cell: string): 'day first' | 'month first' | 'either' | 'year first' | undefined {
  const text = cell.trim().replace(/[T ]\d{1,2}:\d{2}.*$/, '');
  if (/^\d{4}[-/. ]\d{1,2}[-/. ]\d{1,2}$/.test(text)) return 'year first';
  const match = /^(\d{1,2})\s?[-/. ]\s?(\d{1,2})\s?[-/. ]\s?(?:\d{4}|\d{2})$/.exec(text);
  if (match === null) return undefined;
  const [first, second] = [Number(match[1]), Number(match[2])];
  if (first === second) return undefined;
  if (first > 12 && second <= 12) return 'day first';
  if (second > 12 && first <= 12) return 'month first';
  return first <= 12 && second <= 12 ? 'either' : undefined;
}

/** The age someone born on `birth` has. */
export const plausibleBirth = (birth: Day, today: Day): 'in the future' | 'too young' | 'too old' | 'usual' => {
  const age = ageOn(birth, today);
  if (birth > today) return 'in the future';
  return age > plausibleAge.most ? 'too old' : age < plausibleAge.least ? 'too young' : 'usual';
};
