/** Which blood samples count, and whether one does on a day (docs/readiness.md R1). */
import { type Day, addDays, shortDate } from '../calendar/day.ts';
import { type Scaled } from '../exact/decimal.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Evidence, Exception, Sample } from './evidence.ts';

/** From which sample date samples count. After an illness nobody has ended none does. */
export type SamplesCount =
  | { readonly from: Day; readonly because: string }
  | { readonly from: 'any' }
  | { readonly from: 'none'; readonly because: string };

export function samplesCount(evidence: Evidence, protocol: Protocol): SamplesCount {
  const { wellSince } = evidence;
  let floor: Day | undefined;
  let because = '';
  for (const illness of evidence.illnesses) {
    if (wellSince === undefined || wellSince < illness.on) {
      return { from: 'none', because: `${illness.body.what} (${shortDate(illness.on)}), not recorded as over` };
    }
    floor = addDays(wellSince, protocol.number.wellDaysBeforeSample);
    because = `${illness.body.what} (${shortDate(illness.on)}), well since ${shortDate(wellSince)}`;
  }
  for (const operation of evidence.operations) {
    const from = addDays(operation.on, protocol.number.surgerySampleDays + 1);
    if (floor !== undefined && floor >= from) continue;
    floor = from;
    because = `${operation.body.what} on ${shortDate(operation.on)}`;
  }
  return floor === undefined ? { from: 'any' } : { from: floor, because };
}

/** Voided: taken before the day from which samples count, or during an acute admission. */
export const isVoided = (sample: Sample, count: SamplesCount): boolean =>
  sample.acute || count.from === 'none' || (count.from !== 'any' && sample.on < count.from);

export const whyVoided = (sample: Sample, count: SamplesCount): string =>
  sample.acute ? 'taken during an acute admission' : 'because' in count ? count.because : 'voided';

/** Past its days, and no exception carries it. */
export const isOutOfDate = (
  sample: { readonly on: Day },
  day: Day,
  validDays: number,
  exception?: Exception,
): boolean => day > sample.on + validDays && !carriedBy(exception, day);

/** The exception that makes a sample past its days count on a day, if one does. */
export const carriedBy = (exception: Exception | undefined, day: Day): boolean =>
  exception !== undefined && exception.from <= day && day <= exception.until;

/** "<" and ">" against the limit they can be judged by: true, false, or cannot be told. */
export function reachesFloor(value: Scaled, comparator: string, floor: Scaled): boolean | undefined {
  if (comparator === '<' || comparator === '<=') return value <= floor ? false : undefined;
  if (comparator === '>' || comparator === '>=') return value >= floor ? true : undefined;
  return value >= floor;
}
