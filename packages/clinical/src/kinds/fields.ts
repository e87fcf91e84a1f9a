/** The few field shapes that several entry kinds share. */
import { z } from 'zod';
import { type PlainDate, isPlainDate } from '../calendar/day.ts';
import { parsePartialDate } from '../calendar/partial-date.ts';
import { hasRightCheckDigit } from '../exact/check-digit.ts';
import { celsiusOfFahrenheit } from '../formulas/temperature.ts';

export const dateField = z.custom<PlainDate>(
  (value) => typeof value === 'string' && isPlainDate(value),
  'a date that exists, written YYYY-MM-DD',
);
export const birthField = z
  .string()
  .refine(
    (text) => parsePartialDate(text) !== undefined,
    'a birth date as YYYY-MM-DD, or only what is known: YYYY-MM or YYYY',
  );
/** Free text a person typed. Trimmed, never empty. */
export const textField = z.string().trim().min(1, 'may not be empty').max(2000, 'at most 2000 characters');
export const shortText = z.string().trim().min(1, 'may not be empty').max(200, 'at most 200 characters');
/** What was asked and matched: two at least, and one asked twice is one. */
export const identifiersField = z
  .array(z.enum(['full name', 'birth date', 'number', 'address']))
  .min(2, 'two identifiers are asked')
  .refine((asked) => new Set(asked).size === asked.length, 'one identifier asked twice is one: ask another')
  .readonly();
export const uuidField = z.string().regex(/^[A-Za-z0-9._-]{1,80}$/, 'an id');
/** The server's clock as it stood: which boot of the machine, how long it was up, what the wall clock said. */
export const clockField = z
  .object({ boot: shortText, uptimeMilliseconds: z.number().min(0), wall: shortText })
  .readonly();
/** Degrees of a living person, to a tenth. The two scales share no number, so one read as the other is always noticed. */
export const celsiusField = z
  .number()
  .min(30, 'in degrees Celsius a temperature is between 30 and 43')
  .max(43, 'in degrees Celsius a temperature is between 30 and 43')
  .multipleOf(0.1, 'a temperature to a tenth of a degree');
export const fahrenheitField = z
  .number()
  .min(86, 'in degrees Fahrenheit a temperature is between 86 and 109.4')
  .max(109.4, 'in degrees Fahrenheit a temperature is between 86 and 109.4')
  .multipleOf(0.1, 'a temperature to a tenth of a degree');

type Temperature = {
  readonly temperatureCelsius?: number | undefined;
  readonly temperatureFahrenheit?: number | undefined;
};
/** What was read in degrees Fahrenheit stands beside the same in Celsius, by which everything is judged; two that differ are asked about. */
export const sameTemperature = ({ temperatureCelsius, temperatureFahrenheit }: Temperature): boolean =>
  temperatureFahrenheit === undefined ||
  // Outside its range: that is said by itself.
  !fahrenheitField.safeParse(temperatureFahrenheit).success ||
  celsiusOfFahrenheit(temperatureFahrenheit) === temperatureCelsius;
export const notTheSameTemperature = {
  path: ['temperatureFahrenheit'],
  error: 'the temperature in degrees Celsius is missing or another than the one in Fahrenheit: which was read?',
};
export const timeField = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time as HH:MM, 24 hours');

/** Whether this machine's table of time zones has the name: without it no date of a unit could be told. */
function isTimeZone(name: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: name }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
}
export const zoneField = shortText.refine(isTimeZone, 'no such time zone: write its name, as Europe/London');

/** A global trade item number of 14 digits, as a pack's code carries it. */
export const productNumberField = z
  .string()
  .refine(
    (text) => /^\d{14}$/.test(text) && hasRightCheckDigit(text),
    'no product number: 14 digits, after (01) in the code, the last of which checks the others',
  );
