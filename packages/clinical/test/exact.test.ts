import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  approximately,
  compareRatio,
  compareRatios,
  dividedBy,
  minus,
  parseScaled,
  plus,
  ratio,
  ratioAsNumber,
  ratioOf,
  ratioText,
  ratioTextBeside,
  scaled,
  scaledText,
  times,
} from '@twelvemonth/clinical';

const runs = { seed: 7, numRuns: 1000 };
const anyScaled = fc.integer({ min: -99_999_999, max: 99_999_999 });
const anyRatio = fc
  .tuple(fc.bigInt({ min: -(10n ** 12n), max: 10n ** 12n }), fc.bigInt({ min: 1n, max: 10n ** 12n }))
  .map(([top, over]) => ratio(top, over));

describe('reported decimals', () => {
  test.each(['88', '2.20', '0.0001', '-1.5', '9999999.9999'])(
    '%s is read exactly and printed without trailing noughts',
    (text) => {
      expect(Number(scaledText(scaled(text)))).toBe(Number(text));
    },
  );
  test.each(['', '1.23456', '12345678', '1,5', '1e3', '<5', ' 5', '5 ', '.5', '5.'])(
    '"%s" is refused, not rounded',
    (text) => {
      expect(parseScaled(text)).toBeUndefined();
      expect(() => scaled(text)).toThrow(RangeError);
    },
  );
  test('printing and reading are each other turned round', () => {
    fc.assert(
      fc.property(anyScaled, (n) => parseScaled(scaledText(n as never)) === n),
      runs,
    );
  });
});

describe('ratios', () => {
  test('the float trap: 2.19 + 0.02 x (40 - 39.5) is exactly 2.20', () => {
    expect(2.19 + 0.02 * (40 - 39.5)).toBeLessThan(2.2);
    const exact = plus(
      ratioOf(scaled('2.19')),
      times(ratioOf(scaled('0.02')), minus(ratioOf(scaled('40')), ratioOf(scaled('39.5')))),
    );
    expect(compareRatio(exact, scaled('2.20'))).toBe(0);
  });
  test('comparison agrees with cross-multiplication by difference', () => {
    fc.assert(
      fc.property(anyRatio, anyRatio, (a, b) => {
        const { top } = minus(a, b);
        expect(compareRatios(a, b)).toBe(top < 0n ? -1 : top > 0n ? 1 : 0);
      }),
      runs,
    );
  });
  test('dividing and multiplying cancel', () => {
    fc.assert(
      fc.property(
        anyRatio,
        anyRatio.filter(({ top }) => top > 0n),
        (a, b) => compareRatios(times(dividedBy(a, b), b), a) === 0,
      ),
      runs,
    );
  });
  test('an impossible denominator is a defect', () => {
    expect(() => ratio(1n, 0n)).toThrow(RangeError);
  });
  test('as a number it is as near as a float can be to nine places', () => {
    expect(ratioAsNumber(ratio(1n, 3n))).toBeCloseTo(1 / 3, 8);
    expect(approximately(scaled('2.20'))).toBe(2.2);
  });
});

describe('plain numbers and big ones', () => {
  /** Around 2 to the power 53, where a plain number stops being exact, and far beyond it. */
  const anyWhole = fc.oneof(
    fc.bigInt({ min: -1000n, max: 1000n }),
    fc.bigInt({ min: -(10n ** 8n), max: 10n ** 8n }),
    fc.bigInt({ min: 2n ** 53n - 50n, max: 2n ** 53n + 50n }),
    fc.bigInt({ min: -(10n ** 24n), max: 10n ** 24n }),
  );
  const anyParts = fc.tuple(
    anyWhole,
    anyWhole.filter((over) => over > 0n),
  );
  const is = (found: { top: number | bigint; over: number | bigint }, top: bigint, over: bigint): boolean =>
    BigInt(found.top) * over === top * BigInt(found.over);

  test('every sum, product, quotient and comparison is what big numbers alone give', () => {
    fc.assert(
      fc.property(anyParts, anyParts, ([a, b], [c, d]) => {
        const [left, right] = [ratio(a, b), ratio(c, d)];
        expect(is(plus(left, right), a * d + c * b, b * d)).toBe(true);
        expect(is(minus(left, right), a * d - c * b, b * d)).toBe(true);
        expect(is(times(left, right), a * c, b * d)).toBe(true);
        expect(c <= 0n || is(dividedBy(left, right), a * d, b * c)).toBe(true);
        expect(compareRatios(left, right)).toBe(a * d < c * b ? -1 : a * d > c * b ? 1 : 0);
      }),
      runs,
    );
  });
  test('a decimal against a ratio, and text, too', () => {
    const rounded = (top: bigint, over: bigint): bigint => (top * 200n + over) / (over * 2n);
    fc.assert(
      fc.property(anyParts, anyScaled, ([top, over], threshold) => {
        const found = compareRatio(ratio(top, over), threshold as never);
        const difference = top * 10_000n - BigInt(threshold) * over;
        expect(found).toBe(difference < 0n ? -1 : difference > 0n ? 1 : 0);
        const size = top < 0n ? -top : top;
        expect(ratioText(ratio(size, over), 2).replace('.', '')).toBe(String(rounded(size, over)).padStart(3, '0'));
      }),
      runs,
    );
  });
  test('a number that is not a whole one, or was never exact, is refused', () => {
    expect(() => ratio(0.1, 1)).toThrow(RangeError);
    expect(() => ratio(2 ** 53, 1)).toThrow(RangeError);
    expect(compareRatios(ratio(2n ** 53n + 1n, 1), ratio(2n ** 53n, 1))).toBe(1);
  });
});

describe('a number beside a limit', () => {
  test.each([
    [34_996n, 1000n, '34.996'],
    [34_96n, 100n, '34.96'],
    [3499n, 100n, '34.99'],
    [35n, 1n, '35.00'],
    [3_500_001n, 100_000n, '35.00001'],
  ])('%i/%i beside 35 prints %s', (top, over, text) => {
    expect(ratioTextBeside(ratio(top, over), 2, [scaled('35')])).toBe(text);
  });
  test('what is printed always lies where the number lies', () => {
    fc.assert(
      fc.property(fc.bigInt({ min: 34_990_000n, max: 35_010_000n }), (top) => {
        const value = ratio(top, 1_000_000n);
        const printed = Number(ratioTextBeside(value, 2, [scaled('35')]));
        expect(Math.sign(printed - 35)).toBe(compareRatio(value, scaled('35')));
      }),
      runs,
    );
  });
  test('rounding is half up', () => {
    expect(ratioText(ratio(34_675n, 1000n), 2)).toBe('34.68');
    expect(ratioText(ratio(-5n, 2n), 0)).toBe('-3');
    expect(ratioText(ratio(1n, 3n), 4)).toBe('0.3333');
  });
});
