/** A time of day as a tick of the day it is meant for. */
import { type Day, clockAt } from '@twelvemonth/planning';
import { misused } from './ending.ts';

const minutesPerHour = 60;

/** The grid's time before a time of the day: nobody looks at the clock only every five minutes. */
export function onGrid(day: Day, time: string): string {
  const [hour = 0, minute = 0] = time.split(':').map(Number);
  const since = hour * minutesPerHour + minute - day.startsAtMinute;
  return clockAt(day, Math.floor(since / day.minutesPerTick));
}

export function tickOf(day: Day, time: string): number {
  for (let tick = 0; tick <= day.ticks; tick += 1) if (clockAt(day, tick) === time) return tick;
  throw misused(
    `--now ${time} is not a time of the day: write ${clockAt(day, 0)} to ${clockAt(day, day.ticks)} in steps of ${day.minutesPerTick} minutes.`,
  );
}
