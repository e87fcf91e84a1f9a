/**
 * What weight, or what creatinine, would bring a clearance to the limit by both forms, the rest unchanged. Said beside a
 * value that fails by a little, so that nobody mistakes a digit for a kidney; it is no invitation to repeat until it passes.
 */
import type { Scaled } from '../exact/decimal.ts';
import {
  type Ratio,
  compareRatios,
  dividedBy,
  ratio,
  ratioAsNumber,
  ratioOf,
  roundedDown,
  roundedUp,
  times,
} from '../exact/ratio.ts';
import { type ClearanceInput, creatinineClearance } from './creatinine-clearance.ts';
import { creatinineMgPerDl, weightInPounds } from './units.ts';

export type Sensitivity = {
  /** Least weight, in whole tenths of a kilogram, that passes; undefined if none up to 300 kg does. */
  readonly weightKg: Ratio | undefined;
  /** Highest whole creatinine in umol/L that passes; undefined if none does. */
  readonly creatinineUmolPerL: number | undefined;
};

const TEN = ratio(10, 1);
const MOST_TENTHS_OF_KG = 3000;
const MOST_UMOL_PER_L = 2000;

/** Clearance is in proportion to the weight, and to one over the creatinine: both limits are told exactly, without trying. */
export function whatWouldClear(input: ClearanceInput, floor: Scaled): Sensitivity {
  const { weightKg, creatinineUmolPerL } = input;
  const { byMicromoles, byMilligrams } = creatinineClearance(input);
  const lower = compareRatios(byMicromoles, byMilligrams) <= 0 ? byMicromoles : byMilligrams;
  // At an age at which the formula gives nothing, no weight and no creatinine passes.
  if (lower.top <= 0) return { weightKg: undefined, creatinineUmolPerL: undefined };
  const limit = ratioOf(floor);
  const tenths = roundedUp(dividedBy(times(times(limit, weightKg), TEN), lower));
  const creatinine = floor <= 0 ? MOST_UMOL_PER_L : roundedDown(dividedBy(times(lower, creatinineUmolPerL), limit));
  return {
    weightKg: tenths > MOST_TENTHS_OF_KG ? undefined : ratio(tenths < 1 ? 1 : tenths, 10),
    creatinineUmolPerL:
      creatinine < 1 ? undefined : creatinine > MOST_UMOL_PER_L ? MOST_UMOL_PER_L : Number(creatinine),
  };
}

/** A least weight in pounds, to the tenth scales show: rounded up, so that it passes too. */
export const poundsRoundedUp = (kg: Ratio): string =>
  (Math.ceil(ratioAsNumber(times(weightInPounds(kg), ratio(10, 1)))) / 10).toFixed(1);

/** A highest creatinine in mg/dL, to the hundredth laboratories print: rounded down, so that it passes too. */
export function mgPerDlRoundedDown(umolPerL: number): string {
  const hundredths = Math.floor(ratioAsNumber(creatinineMgPerDl(ratio(umolPerL * 100, 1))));
  return (hundredths / 100).toFixed(2);
}
