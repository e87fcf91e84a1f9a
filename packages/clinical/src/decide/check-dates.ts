/** Nothing is written of the future, nor of the time before someone was born. */
import { type Day, civilFromDay, parseDay, shortDate } from '../calendar/day.ts';
import { parsePartialDate } from '../calendar/partial-date.ts';
import { localDate } from '../ledger/entry.ts';
import { type SubjectRecord } from '../record/patient-record.ts';
import { newestWritten } from '../record/newest-written.ts';
import { type Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';
import type { Surroundings } from './surroundings.ts';

/** The day an entry is about; undefined (and a refusal elsewhere) if it cannot be read. */
export const dayOf = (effectiveAt: string): Day | undefined => parseDay(localDate(effectiveAt));

export function checkNotFuture(effectiveAt: string, field: string, now: Surroundings): readonly Refusal[] {
  const on = dayOf(effectiveAt);
  if (on === undefined)
    return [
      refusal('field-wrong', `${effectiveAt} is not a date that exists`, { field, remedy: 'write it as YYYY-MM-DD' }),
    ];
  const isMoment = effectiveAt.length > 10;
  if (on > now.today || (isMoment && Date.parse(effectiveAt) > Date.parse(now.moment))) {
    const time = isMoment && on === now.today ? `${effectiveAt.slice(11, 16)} on ` : '';
    return [
      refusal('in-the-future', `${time}${shortDate(on)} is still to come: only what has happened is written`, {
        field,
        remedy: 'give the day or the time on which it was true',
      }),
    ];
  }
  return [];
}

/** `born` as recorded: whole, a month, or a year; the entry may not lie before any day it could mean. */
export function checkNotBeforeBirth(born: string | undefined, on: Day, field: string): readonly Refusal[] {
  const birth = born === undefined ? undefined : parsePartialDate(born);
  if (birth === undefined) return [];
  const { year, month } = civilFromDay(on);
  const before =
    birth.precision === 'day'
      ? on < birth.day
      : birth.precision === 'month'
        ? year < birth.year || (year === birth.year && month < birth.month)
        : year < birth.year;
  return before
    ? [
        refusal('before-birth', `${shortDate(on)} lies before the birth date (${born ?? ''})`, {
          field,
          remedy: 'check the year',
        }),
      ]
    : [];
}

export const bornOf = (record: SubjectRecord): string | undefined => newestWritten(record, 'identity')?.body.born;

/** A birth date that is still to come. */
export function checkBorn(born: string, field: string, now: Surroundings): readonly Refusal[] {
  const birth = parsePartialDate(born);
  if (birth === undefined) return [];
  const today = civilFromDay(now.today);
  const future =
    birth.precision === 'day'
      ? birth.day > now.today
      : birth.year > today.year ||
        (birth.precision === 'month' && birth.year === today.year && birth.month > today.month);
  return future
    ? [refusal('in-the-future', 'a birth date cannot be in the future', { field, remedy: 'check the year' })]
    : [];
}
