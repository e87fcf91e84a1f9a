/**
 * A thermometer is read to a tenth of a degree, and the charts that use it are written in tenths: 38.0 is one row and 38.1 the
 * next. So a temperature is compared in whole tenths, and one written finer belongs to no row: it is asked about, not rounded.
 */
const NOISE = 1e-6;

/**
 * Degrees Celsius to a tenth from degrees Fahrenheit to a tenth (5/9 of what is above 32, by definition). The nearest tenth: a
 * limit kept in whole tenths is never missed by it, for what reaches such a limit cannot be nearer to the tenth below.
 */
export const celsiusOfFahrenheit = (fahrenheit: number): number => Math.round((((fahrenheit - 32) * 5) / 9) * 10) / 10;

/** Undefined for what is no reading to a tenth. */
export function tenthsOfDegree(celsius: number): number | undefined {
  const tenths = Math.round(celsius * 10);
  return Math.abs(celsius * 10 - tenths) < NOISE ? tenths : undefined;
}
