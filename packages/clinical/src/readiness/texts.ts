/** The few phrases that several sentences share. */
import { type Day, civilFromDay, shortDate } from '../calendar/day.ts';

/** "8 Jan - 2 Mar 2027", "28 Nov 2026 - 19 Jan 2027", "28 Nov 2026", "from 28 Nov 2026" */
export function rangeText(first: Day, last: Day | undefined): string {
  if (last === undefined) return `from ${shortDate(first)}`;
  if (first === last) return shortDate(first);
  const from =
    civilFromDay(first).year === civilFromDay(last).year ? shortDate(first).replace(/ \d{4}$/, '') : shortDate(first);
  return `${from} - ${shortDate(last)}`;
}
