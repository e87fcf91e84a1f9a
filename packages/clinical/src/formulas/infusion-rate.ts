/**
 * How fast a pump or a roller clamp must run. mL/h = mL x 60 / minutes; drops/min = mL x drops per mL / minutes.
 * At the shortest allowed time drops are rounded down: 134 drops a minute of a 20-drop set would finish 100 mL in 14.93
 * minutes, 133 in 15.04. The published nursing figure for 100 mL in 15 minutes at 20 drops per mL is 133.
 */
export const pumpMillilitersPerHour = (milliliters: number, minutes: number): number => (milliliters * 60) / minutes;

/** Whole drops a minute, never so many that the infusion would end before `minutes`. */
export const dropsPerMinute = (milliliters: number, minutes: number, dropsPerMilliliter: 10 | 15 | 20 | 60): number =>
  Math.floor((milliliters * dropsPerMilliliter) / minutes);

/** Minutes in which a pump at this rate delivers the volume. */
export const minutesAtRate = (milliliters: number, millilitersPerHour: number): number =>
  (milliliters * 60) / millilitersPerHour;
