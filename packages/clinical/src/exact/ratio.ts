/**
 * Exact fractions, for every number that meets a threshold. Whole numbers of any size, so that pounds converted to kilograms
 * and a laboratory's four decimals lose nothing on the way. A whole number is a plain one as long as it is exact as such, and a
 * big one beyond: a product or sum of exact numbers that is still within the safe range is exact itself, and is looked at before
 * it is kept.
 */
import { DECIMAL_PLACES, type Scaled } from './decimal.ts';

const SCALE = 10 ** DECIMAL_PLACES;

type Whole = number | bigint;

/** top / over, with `over` above nought. Not reduced: compare with the functions here, never by fields. */
export type Ratio = { readonly top: Whole; readonly over: Whole };

export function ratio(top: Whole, over: Whole): Ratio {
  if (over <= 0) throw new RangeError(`not an exact ratio: ${top} / ${over}`);
  return { top: plain(top), over: plain(over) };
}

/** A plain number where it is exact. A number that is no whole one, or beyond the safe range, was never exact. */
function plain(whole: Whole): Whole {
  if (typeof whole === 'bigint') {
    const number = Number(whole);
    return Number.isSafeInteger(number) ? number : whole;
  }
  if (!Number.isSafeInteger(whole)) throw new RangeError(`not an exact whole number: ${whole}`);
  return whole;
}

function product(a: Whole, b: Whole): Whole {
  if (typeof a === 'number' && typeof b === 'number') {
    const made = a * b;
    if (Number.isSafeInteger(made)) return made;
  }
  return BigInt(a) * BigInt(b);
}

function sum(a: Whole, b: Whole): Whole {
  if (typeof a === 'number' && typeof b === 'number') {
    const made = a + b;
    if (Number.isSafeInteger(made)) return made;
  }
  return BigInt(a) + BigInt(b);
}

const negative = (a: Whole): Whole => (typeof a === 'number' ? 0 - a : -a);

/** In hundredths or whole where it is no finer, so that what is made of it stays small. */
export function ratioOf(value: Scaled): Ratio {
  if (value % SCALE === 0) return { top: value / SCALE, over: 1 };
  return value % 100 === 0 ? { top: value / 100, over: SCALE / 100 } : { top: value, over: SCALE };
}

export const plus = (a: Ratio, b: Ratio): Ratio => ({
  top: sum(product(a.top, b.over), product(b.top, a.over)),
  over: product(a.over, b.over),
});
export const minus = (a: Ratio, b: Ratio): Ratio => ({
  top: sum(product(a.top, b.over), negative(product(b.top, a.over))),
  over: product(a.over, b.over),
});
export const times = (a: Ratio, b: Ratio): Ratio => ({ top: product(a.top, b.top), over: product(a.over, b.over) });

/** a / b; b must be above nought. */
export const dividedBy = (a: Ratio, b: Ratio): Ratio => ratio(product(a.top, b.over), product(a.over, b.top));

/** Negative, zero or positive, as a is below, equal to or above b. */
export function compareRatios(a: Ratio, b: Ratio): number {
  const left = product(a.top, b.over);
  const right = product(b.top, a.over);
  // A plain and a big number compare exactly.
  return left < right ? -1 : left > right ? 1 : 0;
}

/** Compares a ratio with a decimal exactly. */
export const compareRatio = ({ top, over }: Ratio, threshold: Scaled): number => compareWith(threshold, top, over);

function compareWith(threshold: Scaled, top: Whole, over: Whole): number {
  const left = product(top, SCALE);
  const right = product(threshold, over);
  return left < right ? -1 : left > right ? 1 : 0;
}

/** As a float, for drawing and rounded figures only. */
export const ratioAsNumber = (value: Ratio): number => Number(value.top) / Number(value.over);

/** As text with `places` decimals, rounded half up. */
export function ratioText(value: Ratio, places: number): string {
  return textOf(rounded(value, places), places);
}

/** In units of the last place, rounded half up away from nought. */
const rounded = ({ top, over }: Ratio, places: number): Whole =>
  top < 0 ? negative(halfUp(negative(top), over, places)) : halfUp(top, over, places);

function textOf(units: Whole, places: number): string {
  if (places === 0) return String(units);
  if (units < 0) return `-${textOf(negative(units), places)}`;
  if (typeof units === 'bigint') {
    const digits = units.toString().padStart(places + 1, '0');
    return `${digits.slice(0, -places)}.${digits.slice(-places)}`;
  }
  const one = powerOfTen(places);
  const whole = quotient(units, one);
  return `${whole}.${atLength(String(units - whole * one), places)}`;
}

/** With noughts before it, where it needs any: mostly it does not, and asking costs less than filling up by none. */
const atLength = (digits: string, places: number): string =>
  digits.length === places ? digits : digits.padStart(places, '0');

/** top / over in units of the last place, rounded half up; `top` is not negative. */
function halfUp(top: Whole, over: Whole, places: number): Whole {
  const twice = sum(product(top, 2 * powerOfTen(places)), over);
  const by = product(over, 2);
  if (typeof twice === 'number' && typeof by === 'number') return quotient(twice, by);
  return BigInt(twice) / BigInt(by);
}

/**
 * How often `by` goes into `of`, both safe whole numbers, the first not negative. A float quotient is at most one out, and the
 * product is exact: corrected so it costs a fraction of a remainder of floats.
 */
function quotient(of: number, by: number): number {
  const guess = Math.floor(of / by);
  const left = of - guess * by;
  return left < 0 ? guess - 1 : left >= by ? guess + 1 : guess;
}

const powersOfTen = [1, 10, 100, 1_000, 10_000, 100_000, 1_000_000] as const;
const powerOfTen = (places: number): number => powersOfTen[places] ?? 10 ** places;

/** The least whole number that is not below a value that is not negative. */
export function roundedUp({ top, over }: Ratio): Whole {
  if (typeof top === 'bigint' || typeof over === 'bigint') return (BigInt(top) + BigInt(over) - 1n) / BigInt(over);
  const whole = quotient(top, over);
  return whole * over === top ? whole : whole + 1;
}

/** The greatest whole number that is not above a value that is not negative. */
export const roundedDown = ({ top, over }: Ratio): Whole =>
  typeof top === 'bigint' || typeof over === 'bigint' ? BigInt(top) / BigInt(over) : quotient(top, over);

/** Most decimals shown to keep a number on its own side of a limit. */
const MOST_PLACES = 6;

/**
 * As text with at least `places` decimals, and as many more as it takes for the printed number to lie on the same side of each
 * limit as the number itself: 34.996 against 35 prints "34.996", never "35.00".
 */
export function ratioTextBeside(value: Ratio, places: number, limits: readonly Scaled[]): string {
  for (let shown = places; shown < MOST_PLACES; shown += 1) {
    const units = rounded(value, shown);
    if (isOnItsSide(value, units, shown, limits)) return textOf(units, shown);
  }
  return ratioText(value, MOST_PLACES);
}

/** Whether so many units of the last place lie on the same side of each limit as the value they are printed for. */
function isOnItsSide(value: Ratio, units: Whole, places: number, limits: readonly Scaled[]): boolean {
  for (const limit of limits)
    if (compareWith(limit, units, powerOfTen(places)) !== compareRatio(value, limit)) return false;
  return true;
}
