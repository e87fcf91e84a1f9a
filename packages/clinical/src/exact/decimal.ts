/**
 * Reported numbers, kept exactly. A result is compared with a threshold as a ratio of integers, never as a binary float:
 * 2.19 + 0.02 x (40 - 39.5) is exactly 2.20 here, where floats say 2.1999999999999997 and refuse a calcium of 2.20.
 */

/** Decimal places kept. Clinical results never carry more; a text with more is refused, not rounded. */
export const DECIMAL_PLACES = 4;
const SCALE = 10 ** DECIMAL_PLACES;

declare const scaledBrand: unique symbol;
/** An exact decimal as an integer number of ten-thousandths. */
export type Scaled = number & { readonly [scaledBrand]: 'Scaled' };

const DIGITS_BEFORE_POINT = 7;
const NOUGHT = 48;
const POINT = 46;
const MINUS = 45;

/** Reads "88", "2.20", "-1.5": up to seven digits before the point and four after; undefined for anything else. */
export function parseScaled(text: string): Scaled | undefined {
  // Read by hand: every value of every ledger comes through here, and a pattern costs several times as much.
  const isNegative = text.charCodeAt(0) === MINUS;
  const start = isNegative ? 1 : 0;
  let value = 0;
  let point = -1;
  for (let at = start; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (code === POINT && point === -1) point = at;
    else if (code >= NOUGHT && code < NOUGHT + 10) value = value * 10 + code - NOUGHT;
    else return undefined;
  }
  const before = (point === -1 ? text.length : point) - start;
  const after = point === -1 ? 0 : text.length - point - 1;
  if (before < 1 || before > DIGITS_BEFORE_POINT || after > DECIMAL_PLACES || (point !== -1 && after < 1))
    return undefined;
  for (let place = after; place < DECIMAL_PLACES; place += 1) value *= 10;
  return (isNegative ? -value : value) as Scaled;
}

/** Reads a decimal already known to be well formed (protocol data, a literal). Throws on anything else. */
export function scaled(text: string): Scaled {
  const parsed = parseScaled(text);
  if (parsed === undefined) throw new RangeError(`not a decimal with at most ${DECIMAL_PLACES} places: ${text}`);
  return parsed;
}

/** The number as a float, for drawing and for printing a rounded figure only. */
export const approximately = (value: Scaled): number => value / SCALE;

/** Shortest exact text: "2.2", "88". */
export function scaledText(value: Scaled): string {
  if (value % SCALE === 0) return String(value / SCALE);
  if (value < 0) return `-${scaledText(Math.abs(value) as Scaled)}`;
  let places = DECIMAL_PLACES;
  let units: number = value;
  for (; units % 10 === 0; places -= 1) units /= 10;
  const one = 10 ** places;
  const whole = Math.floor(units / one);
  return `${whole}.${String(units - whole * one).padStart(places, '0')}`;
}
