/** What the clearance of a person rests on, worked out once: values in one unit, baseline, other weights, clearance by age. */
import { type Day, addDays, ageOn, birthdayIn, civilFromDay } from '../calendar/day.ts';
import { type Quantity, exactValue } from '../exact/quantity.ts';
import { type Ratio, compareRatios, minus, ratioOf, times } from '../exact/ratio.ts';
import { type Clearance, bothAtLeast, creatinineClearance } from '../formulas/creatinine-clearance.ts';
import { changedByMoreThan } from '../formulas/change-from-baseline.ts';
import { adjustedWeightKg, idealWeightKg, isAtLeastPercentOf } from '../formulas/ideal-weight.ts';
import { creatinineUmolPerL, heightCm, weightKg } from '../formulas/units.ts';
import type { Protocol } from '../protocol/protocol.ts';
import { HORIZON_DAYS } from '../readiness/context.ts';
import type { Evidence, Weighed } from './evidence.ts';
import { type CarriesBloods, bloodsException } from './exceptions.ts';
import { type SamplesCount, samplesCount, samplesCountFor, samplesRead } from './samples.ts';

export type SomeWeight = { readonly sort: 'actual' | 'ideal' | 'adjusted'; readonly kg: Ratio };

/** What of the evidence the clearance, and what is said of it, rest on. */
export const kidneyReads = [
  ...samplesRead,
  'today',
  'identity',
  'born',
  'sex',
  'creatinine',
  'baselineCreatinines',
  'riseAccepted',
  'lowClearanceAccepted',
  'weight',
  'actualDecidesAssumed',
  'height',
  'nephrotoxic',
  'exceptions',
] as const;
export type KidneyEvidence = Pick<Evidence, (typeof kidneyReads)[number]>;

export type KidneyFacts = {
  readonly evidence: KidneyEvidence;
  readonly protocol: Protocol;
  /** Undefined where the birth date is not whole, or lies ahead. */
  readonly birth: Day | undefined;
  /** Birthdays of the year of today and the years looked ahead, ascending. */
  readonly birthdays: readonly Day[];
  /** Age on a day from today on; the birth date must be known. */
  readonly ageAt: (day: Day) => number;
  /** Undefined where there is none, two of one day differ, or it is no plain number above nought in a known unit. */
  readonly umol: Ratio | undefined;
  /** The actual weight. */
  readonly kg: Ratio | undefined;
  /** The one the protocol lets decide; undefined with the actual weight. */
  readonly deciding: SomeWeight | undefined;
  /** The protocol lets another weight than the actual decide, and no usable height tells it. */
  readonly lacksHeight: boolean;
  readonly count: SamplesCount;
  readonly ageException: CarriesBloods | undefined;
  readonly baseline: () => { readonly umol: Ratio; readonly on: Day } | undefined;
  /** Risen on the baseline, and no prescriber has accepted it. */
  readonly risen: () => boolean;
  /** The same value had again from today on would have risen, whatever was accepted for this one (A2). */
  readonly repeatRises: () => boolean;
  /** The weight before, where the deciding one differs from it by more than the protocol's share and nobody has looked into it. */
  readonly weightChangedFrom: () => Weighed['before'];
  /** Looked at beside the deciding weight. */
  readonly otherWeights: () => readonly SomeWeight[];
  /** Undefined where a value is not known. */
  readonly clearanceAt: (age: number) => Clearance | undefined;
  /** Known, and below the floor by either form. */
  readonly isLowAt: (age: number) => boolean;
  /** Below the floor it is given all the same: the regimen lets a prescriber decide, and one did about this creatinine. */
  readonly mayBeLow: boolean;
  /** By a lighter weight the clearance is below the limit, and no prescriber has settled which weight decides. */
  readonly weightsDisagreeAt: (age: number) => boolean;
  /** The same, of a weight taken anew, for which nothing is settled yet. */
  readonly weightsDisagreeAnewAt: (age: number) => boolean;
};

function usable(value: Quantity, convert: (q: Quantity) => Ratio | undefined): Ratio | undefined {
  return value.comparator === '' && exactValue(value) > 0 ? convert(value) : undefined;
}

/** R2a: the lowest of the creatinines, signed or not, dated from so many days before a day, and before `until`. */
function baselineOf(
  evidence: KidneyEvidence,
  protocol: Protocol,
  before: Day,
  until: number,
): { umol: Ratio; on: Day } | undefined {
  let lowest: { umol: Ratio; on: Day } | undefined;
  for (const one of evidence.baselineCreatinines) {
    if (one.on < before - protocol.number.baselineDays || one.on >= until) continue;
    const umol = usable(one.value, creatinineUmolPerL);
    if (umol !== undefined && (lowest === undefined || compareRatios(umol, lowest.umol) < 0))
      lowest = { umol, on: one.on };
  }
  return lowest;
}

const hasRisen = (umol: Ratio, baseline: Ratio, { exact }: Protocol): boolean =>
  compareRatios(minus(umol, baseline), ratioOf(exact.creatinineRise)) >= 0 ||
  compareRatios(umol, times(baseline, ratioOf(exact.creatinineRiseFactor))) >= 0;

/** R2b: in either direction, on the weight before. */
function changedFrom(kg: Ratio | undefined, weight: Weighed | undefined, protocol: Protocol): Weighed['before'] {
  const before = weight?.before;
  if (kg === undefined || weight === undefined || before === undefined || weight.changeLookedInto) return undefined;
  if (before.on < weight.on - protocol.number.baselineDays) return undefined;
  const was = usable(before.value, weightKg);
  if (was === undefined) return undefined;
  return changedByMoreThan(kg, was, protocol.exact.weightChangePercent) ? before : undefined;
}

const heightOf = ({ height }: KidneyEvidence): Ratio | undefined =>
  height === undefined ? undefined : usable(height.body.quantity, heightCm);

/** Which weights there are beside the actual one, lightest first. */
function otherWeightsThan(kg: Ratio, evidence: KidneyEvidence, { exact }: Protocol): readonly SomeWeight[] {
  const { sex } = evidence;
  const cm = heightOf(evidence);
  if (sex === undefined) return [];
  const ideal = cm === undefined ? undefined : idealWeightKg(sex, cm);
  if (ideal === undefined || compareRatios(kg, ideal) <= 0) return [];
  if (!isAtLeastPercentOf(kg, ideal, exact.adjustedWeightFromPercent)) return [{ sort: 'ideal', kg: ideal }];
  return [
    { sort: 'ideal', kg: ideal },
    { sort: 'adjusted', kg: adjustedWeightKg(kg, ideal, exact.adjustedWeightShare) },
  ];
}

function birthdaysFrom(birth: Day, today: Day): Day[] {
  const last = civilFromDay(addDays(today, HORIZON_DAYS)).year;
  const birthdays: Day[] = [];
  for (let { year } = civilFromDay(today); year <= last; year += 1) birthdays.push(birthdayIn(birth, year));
  return birthdays;
}

/** Worked out when first asked for: most answers never ask. */
function once<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | undefined;
  return () => (made ??= { value: make() }).value;
}

export function kidneyFacts(evidence: KidneyEvidence, protocol: Protocol): KidneyFacts {
  const { born, sex, creatinine, weight, today } = evidence;
  const birth = born?.precision === 'day' && born.day <= today ? born.day : undefined;
  const umol =
    creatinine === undefined || creatinine.contradicted || typeof creatinine.value === 'string'
      ? undefined
      : usable(creatinine.value, creatinineUmolPerL);
  const kg = weight === undefined || typeof weight.value === 'string' ? undefined : usable(weight.value, weightKg);
  const actual: SomeWeight | undefined = kg === undefined ? undefined : { sort: 'actual', kg };
  const baseline = once(() =>
    umol === undefined || creatinine === undefined
      ? undefined
      : baselineOf(evidence, protocol, creatinine.on, creatinine.on),
  );
  const weights = once((): readonly SomeWeight[] =>
    actual === undefined ? [] : [...otherWeightsThan(actual.kg, evidence, protocol), actual],
  );
  const policy = protocol.sheet.weightThatDecides;
  const deciding = policy === 'actual' ? actual : (weights().find(({ sort }) => sort === policy) ?? actual);
  const otherWeights = once(() => weights().filter((one) => one !== deciding));
  const known = new Map<number, Clearance>();
  const birthdays = birth === undefined ? [] : birthdaysFrom(birth, today);
  const ageToday = birth === undefined ? undefined : ageOn(birth, today);
  const horizon = addDays(today, HORIZON_DAYS);

  function ageAt(day: Day): number {
    if (birth === undefined || ageToday === undefined) throw new RangeError('an age without a birth date');
    if (day < today || day > horizon) return ageOn(birth, day);
    let age = ageToday;
    for (const birthday of birthdays) if (birthday > today && birthday <= day) age += 1;
    return age;
  }

  function clearanceWith(ageYears: number, weightInKg: Ratio): Clearance | undefined {
    if (sex === undefined || umol === undefined) return undefined;
    return creatinineClearance({ ageYears, sex, weightKg: weightInKg, creatinineUmolPerL: umol });
  }
  function clearanceAt(age: number): Clearance | undefined {
    const before = known.get(age);
    if (before !== undefined || deciding === undefined) return before;
    const found = clearanceWith(age, deciding.kg);
    if (found !== undefined) known.set(age, found);
    return found;
  }
  function isLowAt(age: number): boolean {
    const clearance = clearanceAt(age);
    return clearance !== undefined && !bothAtLeast(clearance, protocol.exact.clearanceFloor);
  }
  const weightsDisagreeAt = (age: number): boolean => weight?.actualDecides !== true && weightsDisagreeAnewAt(age);
  function weightsDisagreeAnewAt(age: number): boolean {
    // Below the limit by the deciding weight there is nothing left to disagree about.
    if (evidence.actualDecidesAssumed || isLowAt(age)) return false;
    return otherWeights().some((other) => {
      if (deciding === undefined || compareRatios(other.kg, deciding.kg) >= 0) return false;
      const clearance = clearanceWith(age, other.kg);
      return clearance !== undefined && !bothAtLeast(clearance, protocol.exact.clearanceFloor);
    });
  }

  return {
    evidence,
    protocol,
    birth,
    birthdays,
    ageAt,
    umol,
    kg,
    deciding,
    lacksHeight: policy !== 'actual' && heightOf(evidence) === undefined,
    count: samplesCountFor(evidence.nephrotoxic, samplesCount(evidence, protocol)),
    ageException: bloodsException(evidence, protocol),
    baseline,
    risen: once(() => {
      const lowest = evidence.riseAccepted ? undefined : baseline();
      return umol !== undefined && lowest !== undefined && hasRisen(umol, lowest.umol, protocol);
    }),
    repeatRises: once(() => {
      const lowest = umol === undefined ? undefined : baselineOf(evidence, protocol, today, Infinity);
      return umol !== undefined && lowest !== undefined && hasRisen(umol, lowest.umol, protocol);
    }),
    weightChangedFrom: once(() => changedFrom(kg, weight, protocol)),
    otherWeights,
    clearanceAt,
    isLowAt,
    mayBeLow: evidence.lowClearanceAccepted && protocol.regimen.belowClearanceFloor === 'a prescriber decides',
    weightsDisagreeAt,
    weightsDisagreeAnewAt,
  };
}
