import { dropsPerMinute, pumpMillilitersPerHour } from '@twelvemonth/clinical';

/** How fast that is: for a pump, which is never set faster, and for counted drops. */
export function rateInWords(milliliters: number, minutes: number): string {
  const perHour = Math.floor(pumpMillilitersPerHour(milliliters, minutes) * 10) / 10;
  return `${milliliters} mL in ${minutes} minutes: ${perHour} mL/h, or ${dropsPerMinute(milliliters, minutes, 20)} drops a minute (20 drops a mL)`;
}
