/**
 * Exact fractions, for every number that meets a threshold. Integers of any size, so that pounds converted to kilograms
 * and a laboratory's four decimals lose nothing on the way.
 */
import { DECIMAL_PLACES, type Scaled } from './decimal.ts';

const SCALE = 10n ** BigInt(DECIMAL_PLACES);

/** top / over, with `over` above nought. Not reduced: compare with the functions here, never by fields. */
export type Ratio = { readonly top: bigint; readonly over: bigint };

export function ratio(top: bigint, over: bigint): Ratio {
  if (over <= 0n) throw new RangeError(`not an exact ratio: ${top} / ${over}`);
  return { top, over };
}

export const ratioOf = (value: Scaled): Ratio => ({ top: BigInt(value), over: SCALE });

export const plus = (a: Ratio, b: Ratio): Ratio => ({ top: a.top * b.over + b.top * a.over, over: a.over * b.over });
export const minus = (a: Ratio, b: Ratio): Ratio => ({ top: a.top * b.over - b.top * a.over, over: a.over * b.over });
export const times = (a: Ratio, b: Ratio): Ratio => ({ top: a.top * b.top, over: a.over * b.over });

/** a / b; b must be above nought. */
export const dividedBy = (a: Ratio, b: Ratio): Ratio => ratio(a.top * b.over, a.over * b.top);

/** Negative, zero or positive, as a is below, equal to or above b. */
export function compareRatios(a: Ratio, b: Ratio): number {
  const left = a.top * b.over;
  const right = b.top * a.over;
  return left < right ? -1 : left > right ? 1 : 0;
}

/** Compares a ratio with a decimal exactly. */
export function compareRatio(value: Ratio, threshold: Scaled): number {
  const left = value.top * SCALE;
  const right = BigInt(threshold) * value.over;
  return left < right ? -1 : left > right ? 1 : 0;
}

/** As a float, for drawing and rounded figures only. */
export const ratioAsNumber = (value: Ratio): number => Number(value.top) / Number(value.over);

/** As text with `places` decimals, rounded half up. */
export function ratioText(value: Ratio, places: number): string {
  const negative = value.top < 0n;
  const scaled = (negative ? -value.top : value.top) * 10n ** BigInt(places);
  const digits = String((scaled * 2n + value.over) / (value.over * 2n)).padStart(places + 1, '0');
  const whole = places === 0 ? digits : digits.slice(0, -places);
  return `${negative ? '-' : ''}${whole}${places === 0 ? '' : `.${digits.slice(-places)}`}`;
}

/** Most decimals shown to keep a number on its own side of a limit. */
const MOST_PLACES = 6;

/**
 * As text with at least `places` decimals, and as many more as it takes for the printed number to lie on the same side of each
 * limit as the number itself: 34.996 against 35 prints "34.996", never "35.00".
 */
export function ratioTextBeside(value: Ratio, places: number, limits: readonly Scaled[]): string {
  for (let shown = places; shown < MOST_PLACES; shown += 1) {
    const text = ratioText(value, shown);
    const printed = ratio(BigInt(text.replace('.', '')), 10n ** BigInt(shown));
    if (limits.every((limit) => compareRatio(printed, limit) === compareRatio(value, limit))) return text;
  }
  return ratioText(value, MOST_PLACES);
}
