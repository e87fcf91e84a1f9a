/** Ticks in the words of the wall clock. */
import type { Day, Tick } from './day.ts';

const minutesPerHour = 60;
const twoDigits = (value: number): string => String(value).padStart(2, '0');

/** "10:40", the moment a tick begins. */
export function clockAt(day: Day, tick: Tick): string {
  const minute = day.startsAtMinute + tick * day.minutesPerTick;
  return `${twoDigits(Math.floor(minute / minutesPerHour))}:${twoDigits(minute % minutesPerHour)}`;
}

/** "5 minutes", "1 minute". */
export function minutesOf(day: Day, ticks: number): string {
  const minutes = ticks * day.minutesPerTick;
  return minutes === 1 ? '1 minute' : `${minutes} minutes`;
}
