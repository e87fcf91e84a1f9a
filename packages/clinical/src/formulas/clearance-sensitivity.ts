/**
 * What weight, or what creatinine, would bring a clearance to the limit by both forms, the rest unchanged. Said beside a
 * value that fails by a little, so that nobody mistakes a digit for a kidney; it is no invitation to repeat until it passes.
 */
import { type Scaled, approximately } from '../exact/decimal.ts';
import { type Ratio, ratio, ratioAsNumber, times } from '../exact/ratio.ts';
import { type ClearanceInput, bothAtLeast, creatinineClearance } from './creatinine-clearance.ts';
import { creatinineMgPerDl, weightInPounds } from './units.ts';

export type Sensitivity = {
  /** Least weight, in whole tenths of a kilogram, that passes; undefined if none up to 300 kg does. */
  readonly weightKg: Ratio | undefined;
  /** Highest whole creatinine in umol/L that passes; undefined if none does. */
  readonly creatinineUmolPerL: number | undefined;
};

/**
 * The least n in [low, high] for which `holds` is true, where it is true from some n on: looked for from a guess, which may be a
 * step or two out; what holds is always tried and never guessed.
 */
function least(low: number, high: number, guess: number, holds: (n: number) => boolean): number | undefined {
  if (!holds(high)) return undefined;
  let found = Math.min(Math.max(Math.ceil(guess), low), high);
  while (found < high && !holds(found)) found += 1;
  while (found > low && holds(found - 1)) found -= 1;
  return found;
}

const MOST_TENTHS_OF_KG = 3000;
const MOST_UMOL_PER_L = 2000;

export function whatWouldClear(input: ClearanceInput, floor: Scaled): Sensitivity {
  const passes = (change: Partial<ClearanceInput>): boolean =>
    bothAtLeast(creatinineClearance({ ...input, ...change }), floor);
  const { byMicromoles, byMilligrams } = creatinineClearance(input);
  // Clearance is in proportion to the weight, and to one over the creatinine.
  const factor = approximately(floor) / Math.min(ratioAsNumber(byMicromoles), ratioAsNumber(byMilligrams));
  const tenths = least(1, MOST_TENTHS_OF_KG, 10 * ratioAsNumber(input.weightKg) * factor, (n) =>
    passes({ weightKg: ratio(n, 10) }),
  );
  const highest = Math.floor(ratioAsNumber(input.creatinineUmolPerL) / factor);
  const drop = least(0, MOST_UMOL_PER_L - 1, MOST_UMOL_PER_L - highest, (n) =>
    passes({ creatinineUmolPerL: ratio(MOST_UMOL_PER_L - n, 1) }),
  );
  return {
    weightKg: tenths === undefined ? undefined : ratio(tenths, 10),
    creatinineUmolPerL: drop === undefined ? undefined : MOST_UMOL_PER_L - drop,
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
