/** The demo's time: local minutes since 1970 at the units' place. A moment is made from them with the offset of that day. */
import {
  type Day,
  type Instant,
  type LocalMoment,
  civilFromDay,
  dayFromCivil,
  plainDate,
  weekday,
} from '@twelvemonth/clinical';

/** Local minutes: day x 1440 + minute of the day. */
export type Minutes = number;
const MINUTES_A_DAY = 1440;
export const ZONE = 'Europe/London';

export const at = (on: Day, hour: number, minute = 0): Minutes => on * MINUTES_A_DAY + hour * 60 + minute;
export const dayOf = (minutes: Minutes): Day => Math.floor(minutes / MINUTES_A_DAY) as Day;

/** "08:40" on a day. */
export function atTime(on: Day, time: string): Minutes {
  const [hour = 0, minute = 0] = time.split(':').map(Number);
  return at(on, hour, minute);
}

function lastSunday(year: number, month: number): Day {
  const end = dayFromCivil(month === 12 ? year + 1 : year, month === 12 ? 1 : month + 1, 1);
  const last = (end - 1) as Day;
  return (last - (weekday(last) % 7)) as Day;
}

/** Summer time from the last Sunday of March to the last of October, told by the day: nothing here happens at night. */
function isSummer(on: Day): boolean {
  const { year } = civilFromDay(on);
  return on >= lastSunday(year, 3) && on < lastSunday(year, 10);
}

const two = (n: number): string => String(n).padStart(2, '0');

export function momentOf(minutes: Minutes): LocalMoment {
  const on = dayOf(minutes);
  const of = Math.floor(minutes - on * MINUTES_A_DAY);
  return `${plainDate(on)}T${two(Math.floor(of / 60))}:${two(of % 60)}:00.000${isSummer(on) ? '+01:00' : '+00:00'}`;
}

export const instantOf = (minutes: Minutes): Instant => new Date(Date.parse(momentOf(minutes))).toISOString();
