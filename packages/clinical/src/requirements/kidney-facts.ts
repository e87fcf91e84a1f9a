/** What the clearance of a person rests on, worked out once: values in one unit, baseline, other weights, clearance by age. */
import { type Day, addDays, ageAhead, ageOn } from '../calendar/day.ts';
import { isPossibleIn } from '../exact/plausible.ts';
import { type Ratio, compareRatios, minus, ratioOf, times } from '../exact/ratio.ts';
import { type Clearance, bothAtLeast, creatinineClearance } from '../formulas/creatinine-clearance.ts';
import { changedByMoreThan } from '../formulas/change-from-baseline.ts';
import { adjustedWeightKg, idealWeightKg, isAtLeastPercentOf } from '../formulas/ideal-weight.ts';
import { creatinineUmolPerL, heightCm, usable, weightKg } from '../formulas/units.ts';
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
  'medicines',
  'exceptions',
] as const;
export type KidneyEvidence = Pick<Evidence, (typeof kidneyReads)[number]>;

const isPossibleCreatinine = isPossibleIn('creatinine', 'mg/dL', creatinineUmolPerL);
const isPossibleWeight = isPossibleIn('weight', 'kg', weightKg);

/** Outside what a body can have, the number belongs to another unit or its point is out of place: asked about, never used. */
const possible = (value: Ratio | undefined, isPossible: (value: Ratio) => boolean): Ratio | undefined =>
  value !== undefined && isPossible(value) ? value : undefined;

/** R2a: the lowest of the creatinines, signed or not, dated from so many days before a day, and before `until`. */
function baselineOf(evidence: KidneyEvidence, protocol: Protocol, before: Day, until: number): Baseline | undefined {
  let lowest: Baseline | undefined;
  for (const one of evidence.baselineCreatinines) {
    if (one.on < before - protocol.number.baselineDays || one.on >= until) continue;
    if (lowest === undefined || compareRatios(one.umol, lowest.umol) < 0) lowest = one;
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

type Baseline = KidneyEvidence['baselineCreatinines'][number];

/** Undefined: not yet worked out. What was worked out may itself be undefined. */
type Made<T> = { readonly value: T } | undefined;

/**
 * A class, so that its questions are methods of all of them together: most answers ask few of them, and a closure for each, for
 * everyone, costs more than what is asked. What costs something is worked out when it is first read.
 */
export class KidneyFacts {
  readonly evidence: KidneyEvidence;
  readonly protocol: Protocol;
  /** Undefined where the birth date is not whole, or lies ahead. */
  readonly birth: Day | undefined;
  /** Birthdays of the year of today and the years looked ahead, ascending. */
  readonly birthdays: readonly Day[];
  /** Undefined where there is none, two of one day differ, or it is no plain number in a known unit that a body can have. */
  readonly umol: Ratio | undefined;
  /** The actual weight. */
  readonly kg: Ratio | undefined;
  /** The one the protocol lets decide; undefined with the actual weight. */
  readonly deciding: SomeWeight | undefined;
  /** The protocol lets another weight than the actual decide, and no usable height tells it. */
  readonly lacksHeight: boolean;
  readonly count: SamplesCount;
  readonly ageException: CarriesBloods | undefined;
  /** Below the floor it is given all the same: the regimen lets a prescriber decide, and one did about this creatinine. */
  readonly mayBeLow: boolean;
  readonly #ageToday: number | undefined;
  readonly #actual: SomeWeight | undefined;
  #weights: readonly SomeWeight[] | undefined;
  #baseline: Made<Baseline | undefined>;
  #weightChangedFrom: Made<Weighed['before']>;
  #risen: boolean | undefined;
  #repeatRises: boolean | undefined;
  /** The age asked about last, mostly the only one, and its clearance. */
  #ageKnown: number | undefined;
  #clearanceKnown: Clearance | undefined;

  constructor(evidence: KidneyEvidence, protocol: Protocol) {
    const { born, creatinine, weight, today } = evidence;
    this.evidence = evidence;
    this.protocol = protocol;
    this.birth = born?.precision === 'day' && born.day <= today ? born.day : undefined;
    const ahead = this.birth === undefined ? undefined : ageAhead(this.birth, today, addDays(today, HORIZON_DAYS));
    this.birthdays = ahead?.birthdays ?? noBirthdays;
    this.#ageToday = ahead?.age;
    this.umol =
      creatinine === undefined || creatinine.contradicted || typeof creatinine.value === 'string'
        ? undefined
        : possible(usable(creatinine.value, creatinineUmolPerL), isPossibleCreatinine);
    this.kg =
      weight === undefined || typeof weight.value === 'string'
        ? undefined
        : possible(usable(weight.value, weightKg), isPossibleWeight);
    this.#actual = this.kg === undefined ? undefined : { sort: 'actual', kg: this.kg };
    const policy = protocol.sheet.weightThatDecides;
    this.deciding =
      policy === 'actual' ? this.#actual : (this.#allWeights.find(({ sort }) => sort === policy) ?? this.#actual);
    this.lacksHeight = policy !== 'actual' && heightOf(evidence) === undefined;
    this.count = samplesCountFor(evidence.nephrotoxic, samplesCount(evidence, protocol));
    this.ageException = bloodsException(evidence, protocol);
    this.mayBeLow = evidence.lowClearanceAccepted && protocol.regimen.belowClearanceFloor === 'a prescriber decides';
  }

  /** Age on a day from today on; the birth date must be known. */
  ageAt(day: Day): number {
    const { birth, birthdays } = this;
    const { today } = this.evidence;
    if (birth === undefined || this.#ageToday === undefined) throw new RangeError('an age without a birth date');
    if (day < today || day > addDays(today, HORIZON_DAYS)) return ageOn(birth, day);
    let age = this.#ageToday;
    for (const birthday of birthdays) if (birthday > today && birthday <= day) age += 1;
    return age;
  }

  /** The lowest earlier creatinine (R2a). */
  get baseline(): Baseline | undefined {
    const { creatinine } = this.evidence;
    this.#baseline ??= {
      value:
        this.umol === undefined || creatinine === undefined
          ? undefined
          : baselineOf(this.evidence, this.protocol, creatinine.on, creatinine.on),
    };
    return this.#baseline.value;
  }

  /** Risen on the baseline, and no prescriber has accepted it. */
  get risen(): boolean {
    return (this.#risen ??= !this.evidence.riseAccepted && this.#hasRisenOn(this.baseline));
  }

  /** The same value had again from today on would have risen, whatever was accepted for this one (A2). */
  get repeatRises(): boolean {
    const { evidence, protocol } = this;
    return (this.#repeatRises ??= this.#hasRisenOn(baselineOf(evidence, protocol, evidence.today, Infinity)));
  }

  #hasRisenOn(lowest: Baseline | undefined): boolean {
    return this.umol !== undefined && lowest !== undefined && hasRisen(this.umol, lowest.umol, this.protocol);
  }

  /** The weight before, where the deciding one differs from it by more than the protocol's share and nobody has looked into it. */
  get weightChangedFrom(): Weighed['before'] {
    this.#weightChangedFrom ??= { value: changedFrom(this.kg, this.evidence.weight, this.protocol) };
    return this.#weightChangedFrom.value;
  }

  get #allWeights(): readonly SomeWeight[] {
    return (this.#weights ??=
      this.#actual === undefined
        ? []
        : [...otherWeightsThan(this.#actual.kg, this.evidence, this.protocol), this.#actual]);
  }

  /** Looked at beside the deciding weight. */
  get otherWeights(): readonly SomeWeight[] {
    return this.#allWeights.filter((one) => one !== this.deciding);
  }

  #clearanceWith(ageYears: number, weightInKg: Ratio): Clearance | undefined {
    const { sex } = this.evidence;
    if (sex === undefined || this.umol === undefined) return undefined;
    return creatinineClearance({ ageYears, sex, weightKg: weightInKg, creatinineUmolPerL: this.umol });
  }

  /** Undefined where a value is not known. */
  clearanceAt(age: number): Clearance | undefined {
    if (this.deciding === undefined) return undefined;
    if (this.#ageKnown !== age) {
      this.#ageKnown = age;
      this.#clearanceKnown = this.#clearanceWith(age, this.deciding.kg);
    }
    return this.#clearanceKnown;
  }

  /** Known, and below the floor by either form. */
  isLowAt(age: number): boolean {
    const clearance = this.clearanceAt(age);
    return clearance !== undefined && !bothAtLeast(clearance, this.protocol.exact.clearanceFloor);
  }

  /** By a lighter weight the clearance is below the limit, and no prescriber has settled which weight decides. */
  weightsDisagreeAt(age: number): boolean {
    return this.evidence.weight?.actualDecides !== true && this.weightsDisagreeAnewAt(age);
  }

  /** The same, of a weight taken anew, for which nothing is settled yet. */
  weightsDisagreeAnewAt(age: number): boolean {
    const { deciding } = this;
    // Below the limit by the deciding weight there is nothing left to disagree about.
    if (deciding === undefined || this.evidence.actualDecidesAssumed || this.isLowAt(age)) return false;
    return this.#allWeights.some((other) => {
      if (other === deciding || compareRatios(other.kg, deciding.kg) >= 0) return false;
      const clearance = this.#clearanceWith(age, other.kg);
      return clearance !== undefined && !bothAtLeast(clearance, this.protocol.exact.clearanceFloor);
    });
  }
}

const noBirthdays: readonly Day[] = [];
