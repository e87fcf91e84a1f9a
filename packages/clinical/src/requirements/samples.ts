/** Which blood samples count, and whether one does on a day (docs/readiness.md R1). */
import { type Day, addDays, day as dayOf, shortDate } from '../calendar/day.ts';
import { type Scaled } from '../exact/decimal.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Fact } from '../record/patient-record.ts';
import { sameName } from './medicine-name.ts';
import type { Evidence, Sample } from './evidence.ts';
import { type CarriesBloods, lastsOn } from './exceptions.ts';
import { illnessesBy, isOver } from './unwell.ts';

/** From which sample date samples count, and what says so. After an illness nobody has ended none does. */
export type SamplesCount =
  | { readonly from: 'any' }
  | { readonly from: Day; readonly because: () => string }
  | { readonly from: 'none'; readonly because: () => string };

const any: SamplesCount = { from: 'any' };

/** What of the evidence tells from when samples count. */
export const samplesRead = ['illnesses', 'checklists', 'wellSince', 'operations'] as const;

export function samplesCount(evidence: Pick<Evidence, (typeof samplesRead)[number]>, protocol: Protocol): SamplesCount {
  const { wellSince, operations } = evidence;
  const { number } = protocol;
  const illnesses = illnessesBy(evidence, protocol);
  if (illnesses.length === 0 && operations.length === 0) return any;
  const open = illnesses.find((one) => !isOver(one, wellSince));
  if (open !== undefined) {
    return { from: 'none', because: () => `${open.what} (${shortDate(open.on)}), not recorded as over` };
  }
  const illness = illnesses[illnesses.length - 1];
  const operation = operations[operations.length - 1];
  const afterIllness =
    illness === undefined || wellSince === undefined ? undefined : addDays(wellSince.on, number.wellDaysBeforeSample);
  const afterOperation = operation === undefined ? undefined : addDays(operation.on, number.surgerySampleDays + 1);
  if (afterOperation !== undefined && operation !== undefined && afterOperation > (afterIllness ?? -Infinity)) {
    return { from: afterOperation, because: () => `${operation.body.what} on ${shortDate(operation.on)}` };
  }
  if (afterIllness === undefined || illness === undefined || wellSince === undefined) return any;
  return {
    from: afterIllness,
    because: () => `${illness.what} (${shortDate(illness.on)}), well since ${shortDate(wellSince.on)}`,
  };
}

/** The same medicine told again, as it was being taken: nothing new. A changed dose is. */
function tellsAgain(medicine: Fact<'medicine'>, before: readonly Fact<'medicine'>[]): boolean {
  const known = before.findLast(({ body }) => sameName(body.name, medicine.body.name));
  if (known === undefined || known.body.dailyDose !== medicine.body.dailyDose) return false;
  return known.body.stoppedOn === undefined || dayOf(known.body.stoppedOn) >= medicine.on;
}

/**
 * The same for one test: a medicine that works on it, started after a sample, spoils that sample. An entry whose last day lies
 * before its own day tells of the past and spoils nothing. `medicines`: of one sort, oldest first.
 */
export function samplesCountFor(medicines: readonly Fact<'medicine'>[], count: SamplesCount): SamplesCount {
  if (medicines.length === 0) return count;
  const started = medicines.findLast(
    (one, index) =>
      (one.body.stoppedOn === undefined || dayOf(one.body.stoppedOn) >= one.on) &&
      !tellsAgain(one, medicines.slice(0, index)),
  );
  if (started === undefined || count.from === 'none' || (count.from !== 'any' && count.from >= started.on))
    return count;
  return { from: started.on, because: () => `${started.body.name} started on ${shortDate(started.on)}` };
}

/** Voided: taken before the day from which samples count, or during an acute admission. */
export const isVoided = (sample: Sample, count: SamplesCount): boolean =>
  sample.acute || count.from === 'none' || (count.from !== 'any' && sample.on < count.from);

export const whyVoided = (sample: Sample, count: SamplesCount): string =>
  sample.acute ? 'taken during an acute admission' : 'because' in count ? count.because() : 'voided';

/** Past its days, and no exception carries it. */
export const isOutOfDate = (
  sample: { readonly on: Day },
  day: Day,
  validDays: number,
  exception?: CarriesBloods,
): boolean => day > sample.on + validDays && !isCarriedBy(exception, sample, day);

/** Whether the exception makes a sample past its days count on a day. */
const isCarriedBy = (exception: CarriesBloods | undefined, sample: { readonly on: Day }, day: Day): boolean =>
  exception !== undefined && lastsOn(exception, day) && day <= sample.on + exception.oldestDays;

/** "<" and ">" against the limit they can be judged by: true, false, or cannot be told. */
export function reachesFloor(value: Scaled, comparator: string, floor: Scaled): boolean | undefined {
  if (comparator === '<' || comparator === '<=') return value <= floor ? false : undefined;
  if (comparator === '>' || comparator === '>=') return value >= floor ? true : undefined;
  return value >= floor;
}
