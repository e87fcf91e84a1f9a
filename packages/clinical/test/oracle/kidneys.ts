/** R2 of docs/readiness.md: kidney function, asked for one day. */
import { ageOn } from './dates.ts';
import type { OracleFact } from './facts.ts';
import { above, atLeast, below, exactly, type Fraction, fraction, minus, over, plus, times } from './fraction.ts';
import type { View } from './view.ts';
import { type Answer, CANNOT_SAY, decided, NOT_READY, READY } from './answer.ts';
import { isContradicted, last, type Result, resultsOf, type SampleState, stateOf } from './samples.ts';

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
