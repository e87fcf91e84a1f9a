import { dayFromCivil, daysInMonth, plainDate } from '@twelvemonth/clinical';
import { type DateOrder, readTypedDate } from '../words/dates.ts';

/**
 * Reads an expiry as packs print it: a whole date, or month and year, which hold until the month's last day. Two figures of a year
 * are of this century, as no pack is older: 08/28 is August 2028.
 */
export function readExpiry(typed: string, order: DateOrder = 'day first'): string | undefined {
  const month = /^\s*(\d{1,2})\s*[ ./-]\s*(\d{4}|\d{2})\s*$/.exec(typed);
  if (month === null) return readTypedDate(typed, '2999-12-31', order);
  const [m, y] = [Number(month[1]), Number(month[2]?.padStart(4, '20'))];
  return m < 1 || m > 12 ? undefined : plainDate(dayFromCivil(y, m, daysInMonth(y, m)));
}
