/**
 * National Early Warning Score 2, Royal College of Physicians 2017 (chart read). N rows: clinical fact sheet 2h (computed from
 * the chart); V rows: vectors of the reference sheet 2.8.
 */
import { describe, expect, it } from 'vitest';
import { type Observation, news2 } from '@twelvemonth/clinical';

describe('NEWS2 (Royal College of Physicians 2017): rows of the published chart, worked', () => {
  const seen = (
    breathsPerMinute: number,
    saturationPercent: number,
    saturationScale: 1 | 2,
    onOxygen: boolean,
    systolicMmHg: number,
    pulsePerMinute: number,
    consciousness: Observation['consciousness'],
    temperatureCelsius: number,
  ): Observation => ({
    breathsPerMinute,
    saturationPercent,
    saturationScale,
    onOxygen,
    systolicMmHg,
    pulsePerMinute,
    consciousness,
    temperatureCelsius,
  });
  it.each([
    ['N1', seen(16, 97, 1, false, 130, 72, 'A', 36.8), [0, 0, 0, 0, 0, 0, 0], false, 'low'],
    ['N2', seen(18, 96, 1, false, 128, 94, 'A', 38.4), [0, 0, 0, 0, 1, 0, 1], false, 'low'],
    ['N3', seen(22, 95, 1, false, 108, 112, 'A', 39.2), [2, 1, 0, 1, 2, 0, 2], false, 'high'],
    ['N4', seen(16, 89, 1, false, 130, 80, 'A', 36.8), [0, 3, 0, 0, 0, 0, 0], true, 'low to medium'],
    ['N5', seen(16, 89, 2, false, 130, 80, 'A', 36.8), [0, 0, 0, 0, 0, 0, 0], false, 'low'],
    ['N6', seen(18, 95, 2, true, 130, 80, 'A', 37.0), [0, 2, 2, 0, 0, 0, 0], false, 'low'],
    ['N7', seen(18, 95, 2, false, 130, 80, 'A', 37.0), [0, 0, 0, 0, 0, 0, 0], false, 'low'],
    ['N8', seen(14, 98, 1, false, 88, 60, 'A', 36.5), [0, 0, 0, 3, 0, 0, 0], true, 'low to medium'],
    ['N9', seen(25, 97, 2, true, 90, 40, 'U', 35.0), [3, 3, 2, 3, 3, 3, 3], true, 'high'],
    ['N10, upper edges', seen(20, 96, 1, false, 111, 90, 'A', 38.0), [0, 0, 0, 0, 0, 0, 0], false, 'low'],
    ['N11', seen(21, 96, 1, false, 110, 91, 'A', 38.1), [2, 0, 0, 1, 1, 0, 1], false, 'medium'],
    ['V1', seen(16, 96, 1, false, 120, 72, 'A', 36.8), [0, 0, 0, 0, 0, 0, 0], false, 'low'],
    ['V2', seen(20, 95, 1, false, 111, 90, 'A', 38.0), [0, 1, 0, 0, 0, 0, 0], false, 'low'],
    ['V3', seen(21, 94, 1, false, 110, 91, 'A', 38.1), [2, 1, 0, 1, 1, 0, 1], false, 'medium'],
    ['V4', seen(24, 93, 1, true, 100, 110, 'A', 39.0), [2, 2, 2, 2, 1, 0, 1], false, 'high'],
    ['V5', seen(25, 91, 1, true, 90, 131, 'C', 39.1), [3, 3, 2, 3, 3, 3, 2], true, 'high'],
    ['V6', seen(8, 91, 1, false, 90, 40, 'U', 35.0), [3, 3, 0, 3, 3, 3, 3], true, 'high'],
    ['V7, scale 2, 93 % on air', seen(18, 93, 2, false, 130, 80, 'A', 37.0), [0, 0, 0, 0, 0, 0, 0], false, 'low'],
    ['V8, scale 2, 93 % on oxygen', seen(18, 93, 2, true, 130, 80, 'A', 37.0), [0, 1, 2, 0, 0, 0, 0], false, 'low'],
    ['V9, scale 2, 97 % on oxygen', seen(18, 97, 2, true, 130, 80, 'A', 37.0), [0, 3, 2, 0, 0, 0, 0], true, 'medium'],
    ['V10, scale 2, 97 % on air', seen(18, 97, 2, false, 130, 80, 'A', 37.0), [0, 0, 0, 0, 0, 0, 0], false, 'low'],
    ['V11, scale 2, 87 % on air', seen(18, 87, 2, false, 130, 80, 'A', 37.0), [0, 1, 0, 0, 0, 0, 0], false, 'low'],
    ['V12, lower edges', seen(12, 96, 1, false, 219, 51, 'A', 36.1), [0, 0, 0, 0, 0, 0, 0], false, 'low'],
    ['V13', seen(11, 96, 1, false, 220, 50, 'A', 36.0), [1, 0, 0, 3, 1, 0, 1], true, 'medium'],
    ['7 in all is high', seen(21, 95, 1, false, 110, 91, 'A', 39.1), [2, 1, 0, 1, 1, 0, 2], false, 'high'],
    ['V14, new confusion', seen(16, 97, 1, false, 128, 84, 'C', 37.2), [0, 0, 0, 0, 0, 3, 0], true, 'low to medium'],
  ] as const)('%s', (_name, observed, parts, singleThree, risk) => {
    const found = news2(observed);
    if (!found.complete) throw new Error('not whole');
    const { breathsPerMinute, saturationPercent, onOxygen, systolicMmHg, pulsePerMinute, consciousness } = found.parts;
    expect([
      breathsPerMinute,
      saturationPercent,
      onOxygen,
      systolicMmHg,
      pulsePerMinute,
      consciousness,
      found.parts.temperatureCelsius,
    ]).toEqual(parts);
    expect(found).toMatchObject({ total: parts.reduce((sum: number, part) => sum + part, 0), singleThree, risk });
  });

  it('the totals of the vectors are those printed: 0, 1, 6, 10, 19, 18, 0, 3, 5, 0, 1, 0, 6, 3 (reference sheet)', () => {
    const totals = [
      seen(16, 96, 1, false, 120, 72, 'A', 36.8),
      seen(20, 95, 1, false, 111, 90, 'A', 38.0),
      seen(21, 94, 1, false, 110, 91, 'A', 38.1),
      seen(24, 93, 1, true, 100, 110, 'A', 39.0),
      seen(25, 91, 1, true, 90, 131, 'C', 39.1),
      seen(8, 91, 1, false, 90, 40, 'U', 35.0),
      seen(18, 93, 2, false, 130, 80, 'A', 37.0),
      seen(18, 93, 2, true, 130, 80, 'A', 37.0),
      seen(18, 97, 2, true, 130, 80, 'A', 37.0),
      seen(18, 97, 2, false, 130, 80, 'A', 37.0),
      seen(18, 87, 2, false, 130, 80, 'A', 37.0),
      seen(12, 96, 1, false, 219, 51, 'A', 36.1),
      seen(11, 96, 1, false, 220, 50, 'A', 36.0),
      seen(16, 97, 1, false, 128, 84, 'C', 37.2),
    ].map((observed) => {
      const found = news2(observed);
      return found.complete ? found.total : 'incomplete';
    });
    expect(totals).toEqual([0, 1, 6, 10, 19, 18, 0, 3, 5, 0, 1, 0, 6, 3]);
  });

  it.each([
    ['breathsPerMinute', [8, 9, 11, 12, 20, 21, 24, 25], [3, 1, 1, 0, 0, 2, 2, 3]],
    ['saturationPercent', [91, 92, 93, 94, 95, 96], [3, 2, 2, 1, 1, 0]],
    ['systolicMmHg', [90, 91, 100, 101, 110, 111, 219, 220], [3, 2, 2, 1, 1, 0, 0, 3]],
    ['pulsePerMinute', [40, 41, 50, 51, 90, 91, 110, 111, 130, 131], [3, 1, 1, 0, 0, 1, 1, 2, 2, 3]],
    ['temperatureCelsius', [35.0, 35.1, 36.0, 36.1, 38.0, 38.1, 39.0, 39.1], [3, 1, 1, 0, 0, 1, 1, 2]],
  ] as const)('every edge of %s', (parameter, values, scores) => {
    const found = values.map((value) => {
      const score = news2({ ...seen(16, 97, 1, false, 130, 72, 'A', 36.8), [parameter]: value });
      return score.complete ? score.parts[parameter] : 'incomplete';
    });
    expect(found).toEqual(scores);
  });
  it.each([
    [true, [83, 84, 85, 86, 87, 88, 92, 93, 94, 95, 96, 97], [3, 2, 2, 1, 1, 0, 0, 1, 1, 2, 2, 3]],
    [false, [83, 84, 85, 86, 87, 88, 92, 93, 97], [3, 2, 2, 1, 1, 0, 0, 0, 0]],
  ] as const)('every edge of saturation on scale 2, on oxygen: %s', (onOxygen, values, scores) => {
    const found = values.map((value) => {
      const score = news2(seen(16, value, 2, onOxygen, 130, 72, 'A', 36.8));
      return score.complete ? score.parts.saturationPercent : 'incomplete';
    });
    expect(found).toEqual(scores);
  });
  it('89 % scores 3 on scale 1 and nothing on scale 2 (some teaching text has it backwards)', () => {
    expect(news2(seen(16, 89, 1, false, 130, 80, 'A', 36.8))).toMatchObject({ total: 3 });
    expect(news2(seen(16, 89, 2, false, 130, 80, 'A', 36.8))).toMatchObject({ total: 0 });
  });
  it.each(['C', 'V', 'P', 'U'] as const)('consciousness %s scores 3', (consciousness) =>
    expect(news2(seen(16, 97, 1, false, 130, 72, consciousness, 36.8))).toMatchObject({ total: 3, singleThree: true }),
  );
  it('without a recorded scale it is scale 1', () => {
    const { saturationScale: _left, ...rest } = seen(16, 89, 2, false, 130, 80, 'A', 36.8);
    expect(news2(rest)).toMatchObject({ total: 3 });
  });

  it.each([
    'breathsPerMinute',
    'saturationPercent',
    'onOxygen',
    'systolicMmHg',
    'pulsePerMinute',
    'consciousness',
    'temperatureCelsius',
  ] as const)('gives no total when %s is missing, and names it', (parameter) => {
    const { [parameter]: _left, ...rest } = seen(16, 97, 1, false, 130, 72, 'A', 36.8);
    expect(news2(rest)).toEqual({ complete: false, missing: [parameter] });
  });
  it('names everything that is missing', () =>
    expect(news2({ pulsePerMinute: 70, onOxygen: false })).toEqual({
      complete: false,
      missing: ['breathsPerMinute', 'saturationPercent', 'systolicMmHg', 'consciousness', 'temperatureCelsius'],
    }));
  it('what is no number is no measurement: it scores nothing, it is refused', () =>
    expect(() => news2(seen(Number.NaN, 97, 1, false, 130, 72, 'A', 36.8))).toThrow('not a measurement'));
  it('36.05 is no reading to a tenth: it counts as not measured and is never rounded', () =>
    expect(news2(seen(16, 97, 1, false, 130, 72, 'A', 36.05))).toEqual({
      complete: false,
      missing: ['temperatureCelsius'],
    }));
});
