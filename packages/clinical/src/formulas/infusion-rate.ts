/**
 * How fast a pump or a roller clamp must run. mL/h = mL x 60 / minutes; drops/min = mL x drops per mL / minutes (nursing
 * texts, read). Drops are always rounded down: at the shortest allowed time 134 drops a minute of a 20-drop set would finish
 * 100 mL in 14.93 minutes, 133 in 15.04. The published nursing figure for 100 mL in 15 minutes at 20 drops per mL is 133.
 *
 * A set's drops per mL are printed on its packet. Counting drops is a check by eye and drifts; a pump is kept where there is
 * one. Not for a medicine whose rate depends on weight.
 */
export const pumpMillilitersPerHour = (milliliters: number, minutes: number): number => (milliliters * 60) / minutes;

export type DropsPerMilliliter = 10 | 15 | 20 | 60;

/** Whole drops a minute, never so many that the infusion would end before `minutes`. */
export const dropsPerMinute = (milliliters: number, minutes: number, dropsPerMilliliter: DropsPerMilliliter): number =>
  Math.floor((milliliters * dropsPerMilliliter) / minutes);

/** Minutes in which a pump at this rate delivers the volume. */
export const minutesAtRate = (milliliters: number, millilitersPerHour: number): number =>
  (milliliters * 60) / millilitersPerHour;

export type RateCheck = { readonly allowed: true } | { readonly allowed: false; readonly says: string };

/** Whether a rate keeps to the shortest running time. */
export function checkRate(milliliters: number, millilitersPerHour: number, leastMinutes: number): RateCheck {
  if (milliliters * 60 >= leastMinutes * millilitersPerHour) return { allowed: true };
  const minutes = Math.floor(minutesAtRate(milliliters, millilitersPerHour) * 100) / 100;
  return {
    allowed: false,
    says: `${millilitersPerHour} mL/h gives ${milliliters} mL in ${minutes} minutes, less than ${leastMinutes}`,
  };
}
