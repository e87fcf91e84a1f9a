/** The few field shapes that several entry kinds share. */
import { z } from 'zod';
import { type PlainDate, isPlainDate } from '../calendar/day.ts';
import { parsePartialDate } from '../calendar/partial-date.ts';
import { hasRightCheckDigit } from '../exact/check-digit.ts';

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
/** What was asked and matched: two at least. */
export const identifiersField = z
  .array(z.enum(['full name', 'birth date', 'number', 'address']))
  .min(2, 'two identifiers are asked')
  .readonly();
export const uuidField = z.string().regex(/^[A-Za-z0-9._-]{1,80}$/, 'an id');
/** The server's clock as it stood: which boot of the machine, how long it was up, what the wall clock said. */
export const clockField = z
  .object({ boot: shortText, uptimeMilliseconds: z.number().min(0), wall: shortText })
  .readonly();
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
