/** A line of days: where a date stands, and the months under it. */
import { type Day, addMonths, civilFromDay, dayFromCivil, monthNames } from '@twelvemonth/clinical';

export type TimeAxis = { readonly from: Day; readonly until: Day; readonly x: (day: Day) => number };

export function timeAxis(from: Day, until: Day, left: number, right: number): TimeAxis {
  const days = Math.max(1, until - from);
  return { from, until, x: (day) => left + ((Math.min(Math.max(day, from), until) - from) / days) * (right - left) };
}

/** First days of the months after the axis begins. */
export function monthStarts(axis: TimeAxis): readonly Day[] {
  const { year, month } = civilFromDay(axis.from);
  const starts: Day[] = [];
  for (let next = addMonths(dayFromCivil(year, month, 1), 1); next < axis.until; next = addMonths(next, 1))
    starts.push(next);
  return starts;
}

export function yearStarts(axis: TimeAxis): readonly Day[] {
  const starts: Day[] = [];
  for (let year = civilFromDay(axis.from).year + 1; dayFromCivil(year, 1, 1) <= axis.until; year += 1)
    starts.push(dayFromCivil(year, 1, 1));
  return starts;
}

export const monthName = (day: Day): string => monthNames[civilFromDay(day).month - 1] ?? '';
