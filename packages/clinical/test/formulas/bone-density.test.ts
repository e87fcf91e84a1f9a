/**
 * Scores and serial scans. Reference: Looker 1998, Osteoporos Int 8:468 (NHANES III, white women of 20-29; neck secondary, hip
 * from memory). Bands: WHO (read). Least significant change: ISCD glossary (read). Values: clinical fact sheet 2i, 2j (computed).
 */
import { describe, expect, test } from 'vitest';
import {
  type Scan,
  day,
  densityBand,
  densityChange,
  densityScore,
  leastSignificantChange,
  precisionError,
  ratioAsNumber,
  ratioOf,
  ratioText,
  scaled,
  youngAdultReference,
} from '@twelvemonth/clinical';

const exactly = (text: string) => ratioOf(scaled(text));

describe('T-score (WHO 1994)', () => {
  test.each([
    ['femoral neck', '0.558', '-2.500'],
    ['femoral neck', '0.600', '-2.150'],
    ['femoral neck', '0.738', '-1.000'],
    // Published example: -2.73 (secondary).
    ['femoral neck', '0.530', '-2.733'],
    ['total hip', '0.637', '-2.500'],
    ['total hip', '0.700', '-1.984'],
    ['total hip', '0.820', '-1.000'],
  ] as const)('%s, %s g/cm2: %s', (site, value, t) =>
    expect(ratioText(densityScore(scaled(value), youngAdultReference[site]), 3)).toBe(t),
  );
});

describe('Z-score (ISCD, from memory): the same sum with people of the same age', () => {
  test.each([
    ['0.600', '0.680', '0.110', '-0.727'],
    ['0.700', '0.680', '0.110', '0.182'],
    ['0.450', '0.640', '0.105', '-1.810'],
  ])('%s g/cm2, mean %s, SD %s: %s', (value, mean, sd, z) =>
    expect(
      ratioText(densityScore(scaled(value), { meanGramsPerCm2: scaled(mean), sdGramsPerCm2: scaled(sd) }), 3),
    ).toBe(z),
  );
});

describe('the bands of the WHO', () => {
  test.each([
    ['-0.9', 'normal'],
    ['-1.0', 'normal'],
    ['-1.0001', 'low bone mass'],
    ['-2.4999', 'low bone mass'],
    ['-2.5', 'osteoporosis'],
    ['-2.6', 'osteoporosis'],
  ])('%s: %s', (t, band) => expect(densityBand(exactly(t), false)).toBe(band));
  test('the cut-offs of the reference lie exactly in their bands, where floats would not say so', () => {
    expect((0.558 - 0.858) / 0.12).not.toBe(-2.5);
    expect(densityBand(densityScore(scaled('0.558'), youngAdultReference['femoral neck']), false)).toBe('osteoporosis');
    expect(densityBand(densityScore(scaled('0.738'), youngAdultReference['femoral neck']), false)).toBe('normal');
  });
  test('with a fragility fracture osteoporosis is severe; low bone mass stays what it is', () => {
    expect(densityBand(exactly('-2.5'), true)).toBe('severe osteoporosis');
    expect(densityBand(exactly('-2.4'), true)).toBe('low bone mass');
  });
  test('the trap of one decimal: -2.46 is printed -2.5, a band lower than it is', () => {
    expect(ratioText(exactly('-2.46'), 1)).toBe('-2.5');
    expect(densityBand(exactly('-2.46'), false)).toBe('low bone mass');
  });
});

describe('precision and least significant change', () => {
  test.each([
    ['0.010', '0.02770'],
    ['0.012', '0.03324'],
    ['0.015', '0.04155'],
  ])('a precision error of %s g/cm2: %s g/cm2', (error, least) =>
    expect(ratioText(leastSignificantChange(exactly(error)), 5)).toBe(least),
  );
  // ISCD official positions 2019 (from memory), least acceptable precision of a technologist, in per cent.
  test.each([
    ['spine', '1.9', '5.263'],
    ['total hip', '1.8', '4.986'],
    ['femoral neck', '2.5', '6.925'],
  ])('%s %s %%: %s %%', (_site, error, least) =>
    expect(ratioText(leastSignificantChange(exactly(error)), 3)).toBe(least),
  );
  test('five pairs of scans: 0.005701, and 0.015791 (only the arithmetic; ISCD asks for 30 pairs)', () => {
    const pairs = [
      ['0.800', '0.812'],
      ['0.950', '0.944'],
      ['0.700', '0.709'],
      ['1.010', '1.002'],
      ['0.880', '0.880'],
    ] as const;
    const error = precisionError(pairs.map(([a, b]) => [scaled(a), scaled(b)]));
    expect(ratioText(error, 6)).toBe('0.005701');
    // The squares of the five standard deviations come to 0.0001625.
    expect(5 * ratioAsNumber(error) ** 2).toBeCloseTo(0.0001625, 7);
    expect(ratioAsNumber(leastSignificantChange(error))).toBeCloseTo(0.015791, 5);
  });
  test('without scans there is no precision error', () =>
    expect(() => precisionError([])).toThrow('a precision error needs scans'));
});

const scan = (on: string, value: string, more: Partial<Scan> = {}): Scan => ({
  on: day(on),
  gramsPerCm2: scaled(value),
  scanner: 'A',
  site: 'left total hip',
  ...more,
});
const changed = (from: string, to: string, error: string, until = '2026-05-02') => {
  const change = densityChange(scan('2023-05-02', from), scan(until, to), exactly(error));
  if (!change.comparable) throw new Error(change.says);
  return change;
};

describe('change between two scans of one scanner and site', () => {
  test.each([
    ['0.700', '0.728', '0.012', 4.0, false],
    ['0.642', '0.612', '0.010', -4.673, true],
    ['0.850', '0.812', '0.015', -4.471, false],
    ['0.642', '0.650', '0.010', 1.246, false],
  ])('%s to %s g/cm2, precision error %s: %d %%, significant: %s', (from, to, error, percent, significant) => {
    const change = changed(from, to, error);
    expect(change.percent).toBeCloseTo(percent, 3);
    expect(change.significant).toBe(significant);
  });
  test('exactly the least significant change counts, a ten-thousandth less does not, up or down', () => {
    expect(changed('0.7000', '0.7277', '0.010').significant).toBe(true);
    expect(changed('0.7000', '0.7276', '0.010').significant).toBe(false);
    expect(changed('0.7277', '0.7000', '0.010').significant).toBe(true);
    expect(changed('0.7276', '0.7000', '0.010').significant).toBe(false);
    expect(ratioText(changed('0.7000', '0.7277', '0.010').leastSignificant, 4)).toBe('0.0277');
    expect(ratioText(changed('0.7277', '0.7000', '0.010').gramsPerCm2, 4)).toBe('-0.0277');
  });
  test('+4.000 % over three years is 1.333 % a year, linear (compound would be 1.316)', () => {
    // Three years with one leap day, counted as 1096 days of 365.25 to the year.
    expect(changed('0.700', '0.728', '0.012').percentPerYear).toBeCloseTo(1.333, 2);
    expect(100 * (1.04 ** (1 / 3) - 1)).toBeCloseTo(1.316, 3);
    expect(changed('0.700', '0.728', '0.012', '2024-05-02').percentPerYear).toBeCloseTo(4 / (366 / 365.25), 6);
  });
  test.each([
    ['another scanner', { scanner: 'B' }, 'different scanners: A and B'],
    ['the other side', { site: 'right total hip' }, 'different sites: left total hip and right total hip'],
    ['the same day', { on: day('2023-05-02') }, 'two scans of one day, or in the wrong order'],
    ['an earlier day', { on: day('2023-05-01') }, 'two scans of one day, or in the wrong order'],
  ])('%s is not compared', (_name, more, says) =>
    expect(densityChange(scan('2023-05-02', '0.700'), scan('2026-05-02', '0.728', more), exactly('0.01'))).toEqual({
      comparable: false,
      says,
    }),
  );
});
