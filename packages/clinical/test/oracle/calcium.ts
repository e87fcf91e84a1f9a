/** R3 of docs/readiness.md: calcium, asked for one day. */
import { above, below, exactly, fraction, minus, over, plus, times } from './fraction.ts';
import type { View } from './view.ts';
import { type Answer, CANNOT_SAY, NOT_READY, READY } from './answer.ts';
import { isContradicted, isSigned, last, type Result, resultsOf, type SampleState, stateOf } from './samples.ts';
import { loadingsOf } from './vitamin-d.ts';

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
