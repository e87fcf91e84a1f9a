/** Sums with risks: against worked examples that others published, against R's interval, and against themselves. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { effectOn, highestRiskTold, overYears, tabletsInWomen, underEffect, wilson } from '@twelvemonth/counselling';

describe('another time', () => {
  test("20 % in ten years is 2.21 % in one (a public tutorial of rates and probabilities, 'time rescaling', read)", () => {
    // 1 - 0.8^0.1 = 0.02207; the naive 20 / 10 would be 2.
    expect(overYears(0.2, 10, 1)).toBeCloseTo(0.02207, 5);
  });
  test('3.36 events in 100 years are 3.304 % in one year (the same tutorial: RE-LY, warfarin)', () => {
    expect(overYears(1 - Math.exp(-0.0336 * 10), 10, 1)).toBeCloseTo(0.03304, 5);
  });
  const share = fc.double({ min: 0, max: highestRiskTold, noNaN: true });
  const years = fc.integer({ min: 1, max: 10 });
  test('there and back is where it began; longer is never less', () => {
    fc.assert(
      fc.property(share, years, years, (risk, from, to) => {
        const there = overYears(risk, from, to);
        expect(overYears(there, to, from)).toBeCloseTo(risk, 8);
        expect(to >= from ? there >= risk - 1e-12 : there <= risk + 1e-12).toBe(true);
      }),
    );
  });
  test('what is no risk and no time is refused', () => {
    for (const [risk, from, to] of [
      [1, 10, 3],
      [-0.1, 10, 3],
      [0.2, 0, 3],
      [Number.NaN, 10, 3],
    ] as const)
      expect(() => overYears(risk, from, to)).toThrow(RangeError);
  });
});

describe('an effect', () => {
  test('by hand from a publication: Black 1996 Lancet 348:1535', () => {
    // 18.2 % of the women without the tablets broke a bone; hazard ratio 0.72. By hand: ln(1 - 0.182) = -0.2008928;
    // x 0.72 = -0.1446428; 1 - e^-0.1446428 = 13.467 %. The trial counted 139 of 1022: 13.6 %.
    expect(underEffect(0.182, 'hazard ratio', 0.72)).toBeCloseTo(0.13467, 4);
    const effect = effectOn(tabletsInWomen, 'any clinical fracture');
    const counted = (effect?.treated?.events ?? 0) / (effect?.treated?.people ?? 1);
    expect(Math.abs(underEffect(0.182, 'hazard ratio', 0.72) - counted)).toBeLessThan(0.002);
  });
  test('a risk ratio acts on the risk, an odds ratio on the odds', () => {
    // Black 2007: 10.9 % x 0.30 = 3.27 %, printed as 3.3.
    expect(underEffect(0.109, 'risk ratio', 0.3)).toBeCloseTo(0.0327, 6);
    // Black 2012: odds 30 / 587 x 0.51 would be 2.54 %; the printed odds ratio is of other denominators (3.0 against 6.2 %).
    expect(underEffect(0.062, 'odds ratio', 0.51)).toBeCloseTo(0.0326, 4);
  });
  test('no effect changes nothing; the stronger the effect the less is left', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        fc.constantFrom('hazard ratio' as const, 'risk ratio' as const, 'odds ratio' as const),
        fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true })),
        (risk, measure, ratios) => {
          const [strong, weak] = ratios.toSorted((a, b) => a - b) as [number, number];
          expect(underEffect(risk, measure, 1)).toBeCloseTo(risk, 12);
          expect(underEffect(risk, measure, strong)).toBeLessThanOrEqual(underEffect(risk, measure, weak) + 1e-12);
        },
      ),
    );
  });
  test('up to the highest risk told, a higher risk is never spared less; above it, it could be', () => {
    const spared = (risk: number, ratio: number) => risk - underEffect(risk, 'hazard ratio', ratio);
    fc.assert(
      fc.property(
        fc.tuple(
          fc.double({ min: 0, max: highestRiskTold, noNaN: true }),
          fc.double({ min: 0, max: highestRiskTold, noNaN: true }),
        ),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (risks, ratio) => {
          const [low, high] = risks.toSorted((a, b) => a - b) as [number, number];
          expect(spared(high, ratio)).toBeGreaterThanOrEqual(spared(low, ratio) - 1e-12);
        },
      ),
    );
    expect(spared(0.95, 0.9)).toBeLessThan(spared(0.7, 0.9));
  });
});

test("the interval of a share is R's: prop.test(2, 50, correct = FALSE) gives 0.01104 to 0.13460", () => {
  const { from, to } = wilson(2, 50);
  expect(from).toBeCloseTo(0.01104, 5);
  expect(to).toBeCloseTo(0.1346, 4);
  // R: prop.test(0, 250): upper bound by Wilson 0.01513; the exact one in the fact sheets is 0.01465.
  expect(wilson(0, 250).from).toBeCloseTo(0, 12);
});
