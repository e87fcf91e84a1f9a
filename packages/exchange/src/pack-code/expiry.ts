/** The expiry date of a pack code, YYMMDD. A pack may be used through this day. */
import { type Day, dayFromCivil, daysInMonth } from '@twelvemonth/clinical';

export type Expiry = {
  readonly expiresOn: Day;
  /** The code gives a month only (day 00): the last day of that month. Allowed on old stock; worth a look at the pack. */
  readonly monthOnly: boolean;
};

/**
 * Undefined if the date does not exist. The century is the one nearest to the year of the scan: 51 to 99 years ahead belongs
 * to the century before, 50 to 99 behind to the next. Source: GS1 General Specifications, sections "Determination of century"
 * and "Expiration date", where day 00 means the last day of the month.
 */
export function expiryFrom(sixDigits: string, yearOfScan: number): Expiry | undefined {
  if (!/^\d{6}$/.test(sixDigits)) return undefined;
  const yearOfCentury = Number(sixDigits.slice(0, 2));
  const month = Number(sixDigits.slice(2, 4));
  const dayOnPack = Number(sixDigits.slice(4, 6));
  const ahead = yearOfCentury - (yearOfScan % 100);
  const century = Math.floor(yearOfScan / 100) + (ahead >= 51 ? -1 : ahead <= -50 ? 1 : 0);
  const year = century * 100 + yearOfCentury;
  const longest = daysInMonth(year, month);
  if (longest === 0 || dayOnPack > longest) return undefined;
  const monthOnly = dayOnPack === 0;
  return { expiresOn: dayFromCivil(year, month, monthOnly ? longest : dayOnPack), monthOnly };
}
