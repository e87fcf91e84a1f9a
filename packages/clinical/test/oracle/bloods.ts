/** R1 - R4 of docs/readiness.md: bloods, kidney function, calcium, vitamin D, each asked for one day. */
import type { BodyOfKind } from '@twelvemonth/clinical';
import { ageOn } from './dates.ts';
import type { OracleFact } from './facts.ts';
import { type Fraction, above, atLeast, below, exactly, fraction, minus, over, plus, times } from './fraction.ts';
import type { View } from './view.ts';
import { type Answer, CANNOT_SAY, NOT_READY, READY, decided, exceptionHolds } from './answer.ts';

type Result = OracleFact<'result'>;
type Analyte = BodyOfKind<'result'>['analyte'];
export type SampleState = 'never measured' | 'voided' | 'unsigned' | 'out of date' | 'in date';

const last = <Item>(items: readonly Item[]): Item | undefined => items[items.length - 1];

/** Something that happened and, if it is over, the day of the newest word that the person is well. */
type Illness = { readonly on: number; readonly seq: number };

/** R1: illness entries, and answers of a checklist that tell of one. */
function illnesses(view: View): readonly Illness[] {
  const told = view
    .of('checklist')
    .filter(({ body }) =>
      view.world.sheet.dayQuestions.some(
        ({ id, holdsOn, event }) => event !== undefined && body.answers[id]?.answer === holdsOn,
      ),
    );
  return [...view.of('illness'), ...told];
}

/** The day of the newest `well-since`, where that comes after every illness; undefined while one is not over. */
export function wellAgain(view: View): { readonly over: boolean; readonly wellOn: number; readonly ever: boolean } {
  const all = illnesses(view);
  const well = last(view.of('well-since'));
  const over = all.every(({ on, seq }) => well !== undefined && (well.on > on || (well.on === on && well.seq > seq)));
  return { over, wellOn: well?.on ?? -Infinity, ever: all.length > 0 };
}

/** Samples before this day do not count; undefined: no sample counts, not yet well. */
export function floorDay(view: View): number | undefined {
  const { over, wellOn, ever } = wellAgain(view);
  if (!over) return undefined;
  let floor = ever ? wellOn + view.world.count('wellDaysBeforeSample') : -Infinity;
  for (const operation of view.of('surgery'))
    floor = Math.max(floor, operation.on + view.world.count('surgerySampleDays') + 1);
  return floor;
}

const plain = (name: string): string => name.trim().replaceAll(/\s+/g, ' ').toLowerCase();
/** Names that differ only in capitals and in outer or repeated spaces are one name. */
export const sameName = (a: string, b: string): boolean => plain(a) === plain(b);

/** The first days of medicines of a sort that spoil a sample taken before. */
function startsOf(view: View, sort: BodyOfKind<'medicine'>['sort']): readonly number[] {
  const told = view.of('medicine').filter(({ body }) => body.sort === sort);
  return told.flatMap(({ on, body }, index) => {
    if (body.stoppedOn !== undefined && view.day(body.stoppedOn) < on) return [];
    const before = told.slice(0, index).findLast((earlier) => sameName(earlier.body.name, body.name));
    const toldAgain =
      before !== undefined &&
      before.body.dailyDose === body.dailyDose &&
      (before.body.stoppedOn === undefined || view.day(before.body.stoppedOn) >= on);
    return toldAgain ? [] : [on];
  });
}

export const isSigned = (view: View, result: Result): boolean =>
  result.signed === true ||
  view.of('results-signed').some((signature) => signature.body.results.includes(result.ids[0] ?? ''));

const resultsOf = (view: View, analyte: Analyte): readonly Result[] =>
  view.of('result').filter((fact) => fact.body.analyte === analyte);

/** Another counting value of the same test and day differs; one that a plan assumes is never looked at. */
const isContradicted = (view: View, result: Result): boolean =>
  resultsOf(view, result.body.analyte).some(({ on, good, body: { quantity } }) => {
    const own = result.body.quantity;
    const isSame =
      quantity.unit === own.unit &&
      quantity.comparator === own.comparator &&
      !above(exactly(quantity.value), exactly(own.value)) &&
      !below(exactly(quantity.value), exactly(own.value));
    return on === result.on && good !== true && result.good !== true && !isSame;
  });

const isVoided = (view: View, result: Result): boolean => {
  const floor = floorDay(view);
  const sort = result.body.analyte === 'creatinine' ? 'nephrotoxic' : 'calcium-lowering';
  const spoilt = result.body.analyte !== 'albumin' && startsOf(view, sort).some((on) => result.on < on);
  return spoilt || floor === undefined || result.on < floor || result.body.acuteAdmission === true;
};

function stateOf(view: View, result: Result | undefined, day: number): SampleState {
  if (result === undefined) return 'never measured';
  const vitamin = result.body.analyte === 'vitamin D';
  if (!vitamin && isVoided(view, result)) return 'voided';
  if (!isSigned(view, result)) return 'unsigned';
  const valid = view.world.count(vitamin ? 'vitaminDValidDays' : 'bloodsValidDays');
  const carried =
    !vitamin &&
    exceptionHolds(view, 'age of bloods', day) &&
    day - result.on <= view.world.count('exceptionBloodsOldestDays');
  if (day > result.on + valid && !carried) return 'out of date';
  return 'in date';
}

// R2
export type Kidney = {
  readonly state: SampleState;
  readonly creatinine: Result | undefined;
  /** Known and usable, whatever its date and signature. */
  readonly micromoles: Fraction | undefined;
  readonly weight: OracleFact<'weight'> | undefined;
  readonly kilograms: Fraction | undefined;
  readonly person: { readonly born: string; readonly sex: 'female' | 'male' } | undefined;
};

export function kidneyOf(view: View, day: number): Kidney {
  const creatinine = last(resultsOf(view, 'creatinine'));
  const weight = last(view.of('weight'));
  const identity = last(view.of('identity'))?.body;
  const person =
    identity?.sex === undefined || !/^\d{4}-\d{2}-\d{2}$/.test(identity.born)
      ? undefined
      : { born: identity.born, sex: identity.sex };
  return {
    state: stateOf(view, creatinine, day),
    creatinine,
    micromoles:
      creatinine === undefined || isContradicted(view, creatinine)
        ? undefined
        : canBe(micromolesOf(creatinine), LEAST_CREATININE, MOST_CREATININE),
    weight,
    kilograms: weight === undefined ? undefined : canBe(kilogramsOf(weight), exactly('25'), exactly('300')),
    person,
  };
}

const NOUGHT = fraction(0n);

/** umol/L = 88.4 x mg/dL; undefined where the number cannot be used. */
function micromolesOf(result: Result): Fraction | undefined {
  const { comparator, value, unit } = result.body.quantity;
  if (result.good === true || comparator !== '' || !above(exactly(value), NOUGHT)) return undefined;
  if (unit !== 'umol/L' && unit !== 'mg/dL') return undefined;
  const micromoles = unit === 'umol/L' ? exactly(value) : times(exactly(value), exactly('88.4'));
  return micromoles;
}

const LEAST_CREATININE = times(exactly('0.2'), exactly('88.4'));
const MOST_CREATININE = times(exactly('24'), exactly('88.4'));

/**
 * Hazard 9: a deciding number no body can have is a slip of the unit or the point (bands: common practice, no source). What it is
 * compared with, a baseline or the weight before, stays as it is: it can only hold a dose.
 */
const canBe = (value: Fraction | undefined, least: Fraction, most: Fraction): Fraction | undefined =>
  value === undefined || below(value, least) || above(value, most) ? undefined : value;

function kilogramsOf(weight: OracleFact<'weight'>): Fraction | undefined {
  const { comparator, unit } = weight.body.quantity;
  const value = exactly(weight.body.quantity.value);
  if (weight.good === true || comparator !== '' || !above(value, NOUGHT)) return undefined;
  return unit === 'lb' ? times(value, exactly('0.45359237')) : value;
}

/** The lower of the two printed forms, in mL/min. */
function lowerClearance(kidney: Kidney, kilograms: Fraction, day: number): Fraction {
  const { born, sex } = kidney.person ?? { born: '', sex: 'female' };
  const years = times(fraction(BigInt(140 - ageOn(born, day))), kilograms);
  const micromoles = kidney.micromoles ?? fraction(1n);
  const molar = over(times(years, exactly(sex === 'female' ? '1.04' : '1.23')), micromoles);
  const massForm = over(
    times(years, exactly(sex === 'female' ? '0.85' : '1')),
    times(fraction(72n), over(micromoles, exactly('88.4'))),
  );
  return below(molar, massForm) ? molar : massForm;
}

const hasRisenOn = (view: View, value: Fraction, baseline: Fraction): boolean =>
  atLeast(minus(value, baseline), view.world.limit('creatinineRise')) ||
  atLeast(value, times(view.world.limit('creatinineRiseFactor'), baseline));

/** Results outside acute admissions, signed or not, with their values. */
const baselineResults = (view: View): readonly { readonly on: number; readonly value: Fraction }[] =>
  resultsOf(view, 'creatinine').flatMap((result) => {
    const value = micromolesOf(result);
    return value === undefined || result.body.acuteAdmission === true ? [] : [{ on: result.on, value }];
  });

/** R2a: the deciding creatinine against the lowest of the days before. */
export function hasRisen(view: View, kidney: Kidney): boolean {
  const { creatinine, micromoles } = kidney;
  if (creatinine === undefined || micromoles === undefined) return false;
  const since = creatinine.on - view.world.count('baselineDays');
  const rises = baselineResults(view).some(
    ({ on, value }) => on < creatinine.on && on >= since && hasRisenOn(view, micromoles, value),
  );
  return rises && !decided(view, 'creatinine rise accepted', creatinine.ids);
}

/** A2: had again from today on, the newest creatinine would have risen. What a prescriber accepted is not accepted again. */
export function repeatWouldRise(view: View, kidney: Kidney, today: number): boolean {
  const { micromoles } = kidney;
  if (micromoles === undefined) return false;
  const since = today - view.world.count('baselineDays');
  return baselineResults(view).some(({ on, value }) => on >= since && hasRisenOn(view, micromoles, value));
}

/** R2b: by more than the share on the weight before, up or down, and nobody has looked into it. */
function weightChanged(view: View, { weight }: Kidney, actual: Fraction): boolean {
  const earlier = view.of('weight').slice(0, -1);
  const before = last(earlier.filter((fact) => fact.body.method !== 'estimated'));
  // A weight that a step assumes has no entry: it equals the last one, estimated or not, so it is no change.
  if (weight === undefined || before === undefined || weight.ids.length === 0) return false;
  const was = kilogramsOf(before);
  if (was === undefined || before.on < weight.on - view.world.count('baselineDays')) return false;
  const gap = below(actual, was) ? minus(was, actual) : minus(actual, was);
  const percent = over(times(fraction(100n), gap), was);
  return (
    above(percent, view.world.limit('weightChangePercent')) && !decided(view, 'weight change looked into', weight.ids)
  );
}

type Weights = {
  /** By which the clearance is told; undefined: it cannot be, no height is recorded. */
  readonly deciding: Fraction | undefined;
  /** Lighter ones that are looked at beside it. */
  readonly lighter: readonly Fraction[];
};

/** Undefined without a usable height. */
function heightCentimeters(view: View): Fraction | undefined {
  const heights = view.of('height');
  const height =
    last(heights.filter((fact) => fact.body.which === 'peak adult')) ??
    last(heights.filter((fact) => fact.body.which === 'measured now'));
  if (height === undefined || height.body.quantity.comparator !== '') return undefined;
  const value = exactly(height.body.quantity.value);
  return height.body.quantity.unit === 'in' ? times(value, exactly('2.54')) : value;
}

/** Where ideal or adjusted weight decides and nobody recorded a height, nothing can be said. */
export const heightMissing = (view: View): boolean =>
  view.world.sheet.weightThatDecides !== 'actual' && heightCentimeters(view) === undefined;

function weightsOf(view: View, kidney: Kidney, actual: Fraction): Weights {
  const policy = view.world.sheet.weightThatDecides;
  const centimeters = heightCentimeters(view);
  if (centimeters === undefined) return { deciding: policy === 'actual' ? actual : undefined, lighter: [] };
  if (below(centimeters, exactly('152.4'))) return { deciding: actual, lighter: [] };
  const inchesOver = minus(over(centimeters, exactly('2.54')), fraction(60n));
  const ideal = plus(exactly(kidney.person?.sex === 'male' ? '50' : '45.5'), times(exactly('2.3'), inchesOver));
  if (!above(actual, ideal)) return { deciding: actual, lighter: [] };
  const percent = over(times(fraction(100n), actual), ideal);
  const adjusted = atLeast(percent, view.world.limit('adjustedWeightFromPercent'))
    ? plus(ideal, times(view.world.limit('adjustedWeightShare'), minus(actual, ideal)))
    : undefined;
  if (policy === 'ideal') return { deciding: ideal, lighter: [] };
  if (policy === 'adjusted') return { deciding: adjusted ?? actual, lighter: [ideal] };
  return { deciding: actual, lighter: adjusted === undefined ? [ideal] : [ideal, adjusted] };
}

export function kidneyFunction(view: View, day: number): Answer {
  const kidney = kidneyOf(view, day);
  const { person, creatinine, weight, micromoles, kilograms } = kidney;
  if (person === undefined || creatinine === undefined || weight === undefined || kidney.state !== 'in date')
    return CANNOT_SAY;
  if (heightMissing(view)) return CANNOT_SAY;
  if (creatinine.good !== true && micromoles === undefined) return CANNOT_SAY;
  if (weight.good !== true && kilograms === undefined) return CANNOT_SAY;
  if (weight.body.method === 'estimated' || day > weight.on + view.world.count('weightValidDays')) return CANNOT_SAY;
  if (micromoles === undefined || kilograms === undefined) return hasRisen(view, kidney) ? CANNOT_SAY : READY;
  const { deciding, lighter } = weightsOf(view, kidney, kilograms);
  if (deciding === undefined) return CANNOT_SAY;
  const floor = view.world.limit('clearanceFloor');
  const clearance = lowerClearance(kidney, deciding, day);
  const low = below(clearance, floor);
  if (low && !(aPrescriberDecides(view) && decided(view, 'low clearance accepted', creatinine.ids)))
    return aPrescriberDecides(view) ? CANNOT_SAY : NOT_READY;
  if (hasRisen(view, kidney)) return CANNOT_SAY;
  if (weightChanged(view, kidney, kilograms)) return CANNOT_SAY;
  const disagree = !low && lighter.some((other) => below(lowerClearance(kidney, other, day), floor));
  if (disagree && !decided(view, 'weight: actual decides', weight.ids)) return CANNOT_SAY;
  return { verdict: 'ready', near: below(clearance, view.world.limit('nearLimitCeiling')) };
}

/** Below the floor this regimen's medicine is not refused. */
const aPrescriberDecides = (view: View): boolean => view.regimen.belowClearanceFloor === 'a prescriber decides';

/** The clearance itself is what a prescriber has to decide about. */
export function isLowAndOpen(view: View, day: number): boolean {
  const kidney = kidneyOf(view, day);
  if (!aPrescriberDecides(view) || kidney.person === undefined || kidney.creatinine === undefined) return false;
  if (kidney.micromoles === undefined || kidney.kilograms === undefined) return false;
  const { deciding } = weightsOf(view, kidney, kidney.kilograms);
  return (
    deciding !== undefined &&
    below(lowerClearance(kidney, deciding, day), view.world.limit('clearanceFloor')) &&
    !decided(view, 'low clearance accepted', kidney.creatinine.ids)
  );
}

// R3
export type Calcium = {
  readonly state: SampleState | 'albumin missing';
  /** The deciding sample's results: an adjusted calcium, or a total calcium and its albumin. */
  readonly results: readonly Result[];
  readonly on: number | undefined;
};

export function calciumOf(view: View, day: number): Calcium {
  const both = view
    .of('result')
    .filter((fact) => fact.body.analyte === 'adjusted calcium' || fact.body.analyte === 'calcium');
  const on = last(both)?.on;
  if (on === undefined) return { state: 'never measured', results: [], on };
  const adjusted = last(both.filter((fact) => fact.on === on && fact.body.analyte === 'adjusted calcium'));
  if (adjusted !== undefined) return { state: stateOf(view, adjusted, day), results: [adjusted], on };
  const total = last(both.filter((fact) => fact.on === on));
  const albumin = last(resultsOf(view, 'albumin').filter((fact) => fact.on === on));
  const state = stateOf(view, total, day);
  if (total === undefined || state === 'voided') return { state, results: total === undefined ? [] : [total], on };
  const quantity = albumin?.body.quantity;
  const usable = quantity?.comparator === '' && (quantity.unit === 'g/L' || quantity.unit === 'g/dL');
  if (albumin === undefined || isContradicted(view, albumin) || albumin.body.acuteAdmission === true || !usable)
    return { state: 'albumin missing', results: [total], on };
  // An albumin that waits for its signature is not missing: with it the value may be seen to fail.
  return { state: isSigned(view, albumin) ? state : 'unsigned', results: [total, albumin], on };
}

/** The value against its limits, whatever its date and signature. */
export function calciumValue(view: View, calcium: Calcium): Answer {
  const [first, albumin] = calcium.results;
  if (first === undefined) return CANNOT_SAY;
  if (first.good === true) return READY;
  if (isContradicted(view, first)) return CANNOT_SAY;
  const { quantity, referenceLow, referenceHigh } = first.body;
  const own = first.body.analyte === 'adjusted calcium' && referenceLow !== undefined && referenceHigh !== undefined;
  const american = first.body.analyte === 'adjusted calcium' && quantity.unit === 'mg/dL';
  if (quantity.unit !== 'mmol/L' && quantity.unit !== 'mg/dL') return CANNOT_SAY;
  const low = own ? exactly(referenceLow) : view.world.limit(american ? 'calciumLowMgPerDl' : 'calciumLow');
  const high = own ? exactly(referenceHigh) : view.world.limit(american ? 'calciumHighMgPerDl' : 'calciumHigh');
  let value = exactly(quantity.value);
  if (first.body.analyte === 'calcium') {
    if (albumin === undefined || quantity.comparator !== '' || albumin.body.quantity.comparator !== '')
      return CANNOT_SAY;
    if (quantity.unit === 'mg/dL') value = over(value, exactly('4.008'));
    let grams = exactly(albumin.body.quantity.value);
    if (albumin.body.quantity.unit === 'g/dL') grams = times(grams, fraction(10n));
    value = plus(
      value,
      times(view.world.limit('calciumAdjustSlope'), minus(view.world.limit('calciumAdjustAlbumin'), grams)),
    );
  }
  if (quantity.comparator.startsWith('<')) return above(value, low) ? CANNOT_SAY : NOT_READY;
  if (quantity.comparator.startsWith('>')) return below(value, high) ? CANNOT_SAY : NOT_READY;
  return below(value, low) || above(value, high) ? NOT_READY : READY;
}

export function adjustedCalcium(view: View, day: number): Answer {
  const calcium = calciumOf(view, day);
  if (calcium.state !== 'in date') return CANNOT_SAY;
  const finished = loadingsOf(view).findLast(
    (loading) => loading.finishedOn !== undefined && loading.finishedOn <= day,
  )?.finishedOn;
  const asked = finished === undefined ? -Infinity : finished + view.world.count('calciumAfterLoadingDays');
  if ((calcium.on ?? 0) < asked) return CANNOT_SAY;
  return calciumValue(view, calcium);
}

// R4
export type Loading = {
  readonly fact: OracleFact<'vitamin-d-loading'>;
  readonly taken: number;
  readonly lastTaken: number | undefined;
  readonly finishedOn: number | undefined;
  readonly stopped: boolean;
  readonly stoppedOn: number | undefined;
};

export const loadingsOf = (view: View): readonly Loading[] =>
  view.of('vitamin-d-loading').map((fact) => {
    const begins = Math.min(fact.on, view.day(fact.body.startOn));
    const taken = view.of('vitamin-d-taken').filter((dose) => dose.on >= begins);
    let sum = 0;
    let finishedOn: number | undefined;
    // A stop of the same day is of this loading only if it was written after it.
    const stop = view
      .of('vitamin-d-loading-stopped')
      .find((stopped) => stopped.on > fact.on || (stopped.on === fact.on && stopped.seq > fact.seq))?.on;
    let sumAtStop = 0;
    for (const dose of taken) {
      sum += dose.body.doses;
      if (stop !== undefined && dose.on <= stop) sumAtStop = sum;
      if (finishedOn === undefined && sum >= fact.body.doses) finishedOn = dose.on;
    }
    const stopped = stop !== undefined && sumAtStop < fact.body.doses;
    return {
      fact,
      taken: sum,
      lastTaken: last(taken)?.on,
      finishedOn: stopped ? undefined : finishedOn,
      stopped,
      stoppedOn: stopped ? stop : undefined,
    };
  });

export const vitaminDLevel = (view: View): Result | undefined => last(resultsOf(view, 'vitamin D'));

/** The level against the floor of its unit, whatever its date and signature. */
export function levelValue(view: View, level: Result): Answer {
  if (level.good === true) return READY;
  if (isContradicted(view, level)) return CANNOT_SAY;
  const { comparator, value, unit } = level.body.quantity;
  if (unit !== 'nmol/L' && unit !== 'ng/mL') return CANNOT_SAY;
  const floor = view.world.limit(unit === 'nmol/L' ? 'vitaminDFloor' : 'vitaminDFloorNgPerMl');
  if (comparator.startsWith('<')) return above(exactly(value), floor) ? CANNOT_SAY : NOT_READY;
  if (comparator.startsWith('>')) return below(exactly(value), floor) ? CANNOT_SAY : READY;
  return below(exactly(value), floor) ? NOT_READY : READY;
}

const levelState = (view: View, day: number): SampleState => stateOf(view, vitaminDLevel(view), day);

/** "loading after hip repair": whether it is asked for, and whether a finished loading answers it. */
export function hipRepairUnanswered(view: View, day: number): boolean {
  if (!view.world.sheet.hipRepairNeedsLoading) return false;
  if (view.of('dose').some((dose) => dose.body.medicine.startsWith('zoledronic'))) return false;
  const repair = last(view.of('surgery').filter((fact) => fact.body.what !== 'other operation'));
  if (repair === undefined || day - repair.on > view.world.count('hipLookbackDays')) return false;
  return !loadingsOf(view).some(
    (loading) =>
      loading.finishedOn !== undefined &&
      loading.finishedOn <= day &&
      // A loading that is only planned has no entry, and is always after the repair.
      (loading.fact.on > repair.on || loading.fact.ids.length === 0),
  );
}

export function vitaminD(view: View, day: number): Answer {
  if (exceptionHolds(view, 'vitamin D', day)) return READY;
  if (hipRepairUnanswered(view, day)) return NOT_READY;
  const loading = last(loadingsOf(view));
  const level = vitaminDLevel(view);
  const finishedOn = loading?.finishedOn;
  if (finishedOn !== undefined && finishedOn <= day) {
    const newer = level !== undefined && level.on > finishedOn ? level : undefined;
    if (newer === undefined) return loadingStands(view, finishedOn, day);
    // A newer level decides once it is signed; a bad one that waits for its signature is not passed over.
    if (!isSigned(view, newer))
      return levelValue(view, newer).verdict === 'ready' ? loadingStands(view, finishedOn, day) : CANNOT_SAY;
  }
  const byLevel = level === undefined || levelState(view, day) !== 'in date' ? CANNOT_SAY : levelValue(view, level);
  const running = loading !== undefined && !loading.stopped && (finishedOn === undefined || finishedOn > day);
  return running && byLevel.verdict !== 'ready' ? NOT_READY : byLevel;
}

function loadingStands(view: View, finishedOn: number, day: number): Answer {
  const word = maintenanceWord(view, finishedOn);
  const { count } = view.world;
  if (word?.body.taken === false) return CANNOT_SAY;
  if (day <= finishedOn + count('maintenanceConfirmDays')) return READY;
  const confirmed = word !== undefined && day <= word.on + count('maintenanceConfirmDays');
  return confirmed && day <= finishedOn + count('loadingHoldsDays') ? READY : CANNOT_SAY;
}

const maintenanceWord = (view: View, finishedOn: number): OracleFact<'vitamin-d-maintenance'> | undefined =>
  last(view.of('vitamin-d-maintenance').filter((fact) => fact.on > finishedOn));

/** A2: that the daily vitamin D is taken may be asked, where only this word is missing on `day` for a loading ended on C. */
export function maintenanceMayBeAsked(view: View, finishedOn: number, day: number): boolean {
  if (maintenanceWord(view, finishedOn)?.body.taken === false) return false;
  const level = vitaminDLevel(view);
  if (level !== undefined && level.on > finishedOn) return false;
  return (
    loadingStands(view, finishedOn, day).verdict !== 'ready' && day <= finishedOn + view.world.count('loadingHoldsDays')
  );
}

/** R12: a severe lack of vitamin D stands. */
export function severeLack(view: View): boolean {
  const level = vitaminDLevel(view);
  if (level === undefined || level.good === true) return false;
  if (loadingsOf(view).some(({ finishedOn }) => finishedOn !== undefined && finishedOn >= level.on)) return false;
  if (isContradicted(view, level)) return true;
  const { comparator, value, unit } = level.body.quantity;
  if ((unit !== 'nmol/L' && unit !== 'ng/mL') || comparator.startsWith('<')) return true;
  return below(exactly(value), view.world.limit(unit === 'nmol/L' ? 'vitaminDSevere' : 'vitaminDSevereNgPerMl'));
}
