/** Change of a value on the person's own earlier value, in either direction: plain arithmetic, done exactly. */
import type { Scaled } from '../exact/decimal.ts';
import { type Ratio, compareRatios, minus, ratio, ratioOf, times } from '../exact/ratio.ts';

/** Whether `now` differs from `was` by more than so many per cent of `was`. `was` is above nought. */
export function changedByMoreThan(now: Ratio, was: Ratio, percent: Scaled): boolean {
  const change = compareRatios(now, was) < 0 ? minus(was, now) : minus(now, was);
  return compareRatios(times(change, ratio(100, 1)), times(was, ratioOf(percent))) > 0;
}
