/**
 * A birth date as it is known: whole, or only its year, or its year and month. Registers are full of "1941".
 * Nothing here ever completes a date: no first of January, no middle of the year.
 */
import { type Day, parseDay, shortDate } from './day.ts';

export type PartialDate =
  | { readonly precision: 'day'; readonly day: Day }
  | { readonly precision: 'month'; readonly year: number; readonly month: number }
  | { readonly precision: 'year'; readonly year: number };

/** Reads `1941-06-02`, `1941-06` or `1941`; undefined if it is none of these or the date does not exist. */
export function parsePartialDate(text: string): PartialDate | undefined {
  const whole = parseDay(text);
  if (whole !== undefined) return { precision: 'day', day: whole };
  const match = /^(\d{4})(?:-(\d{2}))?$/.exec(text);
  if (match === null) return undefined;
  const year = Number(match[1]);
  if (year < 1800) return undefined;
  if (match[2] === undefined) return { precision: 'year', year };
  const month = Number(match[2]);
  return month >= 1 && month <= 12 ? { precision: 'month', year, month } : undefined;
}

/** "2 Jun 1941"; of an incomplete date only what is known, as it is known: "1941-06", "1941". */
export const partialDateText = (text: string): string => textOfKnown(text, parsePartialDate(text));

/** The same, where it was read before. */
export const textOfKnown = (text: string, known: PartialDate | undefined): string =>
  known?.precision === 'day' ? shortDate(known.day) : text;
