/** Exact numbers for the checker: fractions of BigInts, nothing else. */
export type Fraction = { readonly n: bigint; readonly d: bigint };

export const fraction = (n: bigint, d = 1n): Fraction => ({ n, d });

const read = new Map<string, Fraction>();

export function exactly(text: string): Fraction {
  const known = read.get(text);
  if (known !== undefined) return known;
  const found = readExactly(text);
  read.set(text, found);
  return found;
}

function readExactly(text: string): Fraction {
  const [whole = '0', places = ''] = text.replace('-', '').split('.');
  const n = BigInt(whole + places);
  return { n: text.startsWith('-') ? -n : n, d: 10n ** BigInt(places.length) };
}

export const plus = (a: Fraction, b: Fraction): Fraction => ({ n: a.n * b.d + b.n * a.d, d: a.d * b.d });
export const minus = (a: Fraction, b: Fraction): Fraction => ({ n: a.n * b.d - b.n * a.d, d: a.d * b.d });
export const times = (a: Fraction, b: Fraction): Fraction => ({ n: a.n * b.n, d: a.d * b.d });
/** `b` is positive wherever the rules divide. */
export const over = (a: Fraction, b: Fraction): Fraction => ({ n: a.n * b.d, d: a.d * b.n });
export const below = (a: Fraction, b: Fraction): boolean => a.n * b.d < b.n * a.d;
export const atLeast = (a: Fraction, b: Fraction): boolean => !below(a, b);
export const above = (a: Fraction, b: Fraction): boolean => below(b, a);
