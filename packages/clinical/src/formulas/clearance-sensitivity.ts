/**
 * What weight, or what creatinine, would bring a clearance to the limit by both forms, the rest unchanged. Said beside a
 * value that fails by a little, so that nobody mistakes a digit for a kidney; it is no invitation to repeat until it passes.
 */
import type { Scaled } from '../exact/decimal.ts';
import { type Ratio, ratio } from '../exact/ratio.ts';
import { type ClearanceInput, bothAtLeast, creatinineClearance } from './creatinine-clearance.ts';

export type Sensitivity = {
  /** Least weight, in whole tenths of a kilogram, that passes; undefined if none up to 300 kg does. */
  readonly weightKg: Ratio | undefined;
  /** Highest whole creatinine in umol/L that passes; undefined if none does. */
  readonly creatinineUmolPerL: number | undefined;
};

/** The least n in [low, high] for which `holds` is true, where it is true from some n on. */
function least(low: number, high: number, holds: (n: number) => boolean): number | undefined {
  if (!holds(high)) return undefined;
  let from = low;
  let to = high;
  while (from < to) {
    const middle = Math.floor((from + to) / 2);
    if (holds(middle)) to = middle;
    else from = middle + 1;
  }
  return to;
}

export function whatWouldClear(input: ClearanceInput, floor: Scaled): Sensitivity {
  const passes = (change: Partial<ClearanceInput>): boolean =>
    bothAtLeast(creatinineClearance({ ...input, ...change }), floor);
  const tenths = least(1, 3000, (n) => passes({ weightKg: ratio(n, 10) }));
  const drop = least(0, 1999, (n) => passes({ creatinineUmolPerL: ratio(2000 - n, 1) }));
  return {
    weightKg: tenths === undefined ? undefined : ratio(tenths, 10),
    creatinineUmolPerL: drop === undefined ? undefined : 2000 - drop,
  };
}
