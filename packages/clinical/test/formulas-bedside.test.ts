/**
 * Formulas of the bedside and of the review against published tables. Sources beside each block; values marked (C) are
 * computed examples of the clinical fact sheet, reproduced in docs/safety/sources.md.
 */
import { describe, expect, it } from 'vitest';
import {
  densityChange,
  leastSignificantChange,
  precisionError,
  score,
  youngAdultReference,
} from '../src/formulas/bone-density.ts';
import { markerResponse } from '../src/formulas/bone-marker-response.ts';
import { bodyMassIndex, bodySurfaceDuBois, bodySurfaceMosteller, deindexed } from '../src/formulas/body-surface.ts';
import { dropsPerMinute, minutesAtRate, pumpMillilitersPerHour } from '../src/formulas/infusion-rate.ts';
import { type Observation, news2 } from '../src/formulas/news2.ts';
import { paracetamolFor } from '../src/formulas/paracetamol-table.ts';
import { type SiteSigns, phlebitisScore } from '../src/formulas/phlebitis-score.ts';
import { feverGrade, lowCalciumGrade } from '../src/formulas/reaction-grade.ts';

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
    ['N1', seen(16, 97, 1, false, 130, 72, 'A', 36.8), 0, false],
    ['N2', seen(18, 96, 1, false, 128, 94, 'A', 38.4), 2, false],
    ['N3', seen(22, 95, 1, false, 108, 112, 'A', 39.2), 8, false],
    ['N4', seen(16, 89, 1, false, 130, 80, 'A', 36.8), 3, true],
    ['N5', seen(16, 89, 2, false, 130, 80, 'A', 36.8), 0, false],
    ['N6', seen(18, 95, 2, true, 130, 80, 'A', 37.0), 4, false],
    ['N7', seen(18, 95, 2, false, 130, 80, 'A', 37.0), 0, false],
    ['N8', seen(14, 98, 1, false, 88, 60, 'A', 36.5), 3, true],
    ['N9', seen(25, 97, 2, true, 90, 40, 'U', 35.0), 20, true],
    ['N10', seen(20, 96, 1, false, 111, 90, 'A', 38.0), 0, false],
    ['N11', seen(21, 96, 1, false, 110, 91, 'A', 38.1), 5, false],
    ['edge 1', seen(25, 91, 1, true, 90, 131, 'C', 39.1), 19, true],
    ['edge 2', seen(8, 91, 1, false, 90, 40, 'U', 35.0), 18, true],
    ['edge 3', seen(24, 93, 1, true, 100, 110, 'A', 39.0), 10, false],
    ['edge 4', seen(11, 96, 1, false, 220, 50, 'A', 36.0), 6, true],
    ['scale 2, 97 % on oxygen', seen(18, 97, 2, true, 130, 80, 'A', 37.0), 5, true],
    ['scale 2, 97 % on air', seen(18, 97, 2, false, 130, 80, 'A', 37.0), 0, false],
    ['scale 2, 87 %', seen(18, 87, 2, false, 130, 80, 'A', 37.0), 1, false],
  ] as const)('%s', (_name, observed, total, singleThree) => {
    expect(news2(observed)).toMatchObject({ complete: true, total, singleThree });
  });

  it('gives no total when a parameter is missing, and names it', () => {
    const { pulsePerMinute: _left, ...rest } = seen(16, 97, 1, false, 130, 72, 'A', 36.8);
    expect(news2(rest)).toEqual({ complete: false, missing: ['pulsePerMinute'] });
  });
});

describe('infusion rates (nursing texts; 133 drops/min for 100 mL in 15 min at 20 drops/mL is a published figure)', () => {
  it.each([
    [15, 400, 133, 400],
    [20, 300, 100, 300],
    [30, 200, 66, 200],
    [60, 100, 33, 100],
  ])('100 mL in %i minutes', (minutes, perHour, drops20, drops60) => {
    expect(pumpMillilitersPerHour(100, minutes)).toBe(perHour);
    expect(dropsPerMinute(100, minutes, 20)).toBe(drops20);
    expect(dropsPerMinute(100, minutes, 60)).toBe(drops60);
  });
  it('rounds drops down, so that 100 mL never runs in less than the minutes asked for', () => {
    for (let minutes = 15; minutes <= 60; minutes += 1)
      expect((100 * 20) / dropsPerMinute(100, minutes, 20)).toBeGreaterThanOrEqual(minutes);
  });
  it('1200 mL over 6 hours at 15 drops/mL is 50 (published worked sheet)', () =>
    expect(dropsPerMinute(1200, 360, 15)).toBe(50));
  it('450 mL/h gives 100 mL in 13.33 minutes: under 15', () => expect(minutesAtRate(100, 450)).toBeCloseTo(13.333, 3));
});

describe('body surface (Mosteller 1987, Du Bois 1916) and de-indexing (KDIGO 2011); values (C)', () => {
  it.each([
    [160, 58, 1.6055, 1.5989, 52, 48.26, 48.06],
    [152, 45, 1.3784, 1.383, 40, 31.87, 31.98],
    [178, 82, 2.0136, 2.0012, 60, 69.83, 69.41],
    [155, 90, 1.9685, 1.8833, 33, 37.55, 35.92],
    [180, 80, 2.0, 1.9964, 60, 69.36, 69.24],
  ])('%i cm, %i kg', (height, weight, mosteller, duBois, indexed, absoluteMosteller, absoluteDuBois) => {
    expect(bodySurfaceMosteller(height, weight)).toBeCloseTo(mosteller, 4);
    expect(bodySurfaceDuBois(height, weight)).toBeCloseTo(duBois, 4);
    expect(deindexed(indexed, bodySurfaceMosteller(height, weight))).toBeCloseTo(absoluteMosteller, 2);
    expect(deindexed(indexed, bodySurfaceDuBois(height, weight))).toBeCloseTo(absoluteDuBois, 2);
  });
  it.each([
    [160, 58, 22.66],
    [155, 95, 39.54],
    [148, 40, 18.26],
  ])('body mass index at %i cm and %i kg', (height, weight, index) =>
    expect(bodyMassIndex(height, weight)).toBeCloseTo(index, 2),
  );
});

describe('bone density', () => {
  it.each([
    ['femoral neck', 0.558, -2.5],
    ['femoral neck', 0.6, -2.15],
    ['femoral neck', 0.53, -2.733],
    ['total hip', 0.637, -2.5],
    ['total hip', 0.7, -1.984],
  ] as const)('T-score at the %s of %f g/cm2 (Looker 1998)', (site, value, t) =>
    expect(score(value, youngAdultReference[site].mean, youngAdultReference[site].sd)).toBeCloseTo(t, 3),
  );

  it('precision error and least significant change of five pairs (ISCD glossary; (C))', () => {
    const error = precisionError([
      [0.8, 0.812],
      [0.95, 0.944],
      [0.7, 0.709],
      [1.01, 1.002],
      [0.88, 0.88],
    ]);
    expect(error).toBeCloseTo(0.005701, 6);
    expect(leastSignificantChange(error)).toBeCloseTo(0.015791, 5);
  });

  const scan = (valueGramsPerCm2: number, atYear: number, scanner = 'A'): Parameters<typeof densityChange>[0] => ({
    valueGramsPerCm2,
    scanner,
    site: 'total hip',
    atYear,
  });
  it('+0.028 g/cm2 is not significant at a precision error of 0.012; -0.030 is at 0.010 (C)', () => {
    expect(densityChange(scan(0.7, 2023), scan(0.728, 2026), 0.012)).toMatchObject({ significant: false });
    expect(densityChange(scan(0.642, 2023), scan(0.612, 2026), 0.01)).toMatchObject({ significant: true });
    const change = densityChange(scan(0.7, 2023), scan(0.728, 2026), 0.012);
    expect(change.comparable && change.percent).toBeCloseTo(4, 6);
    expect(change.comparable && change.percentPerYear).toBeCloseTo(1.333, 3);
  });
  it('refuses to compare two scanners', () =>
    expect(densityChange(scan(0.7, 2023), scan(0.7, 2026, 'B'), 0.01)).toMatchObject({ comparable: false }));
});

describe('bone marker response (IOF-ECTS 2017)', () => {
  it('P1NP responds above 38 %, CTX above 56 %', () => {
    expect(markerResponse('P1NP', 100, 61).responded).toBe(true);
    expect(markerResponse('P1NP', 100, 62).responded).toBe(false);
    expect(markerResponse('CTX', 100, 43).responded).toBe(true);
    expect(markerResponse('CTX', 100, 44).responded).toBe(false);
  });
});

describe('phlebitis score (Jackson 1998)', () => {
  const none: SiteSigns = {
    pain: false,
    painAlongCannula: false,
    redness: false,
    swelling: false,
    induration: false,
    venousCord: false,
    fever: false,
  };
  it.each([
    ['nothing', none, 0],
    ['slight redness only', { ...none, redness: true }, 1],
    ['swelling alone: not defined, 1 and look again', { ...none, swelling: true }, 1],
    ['pain and redness', { ...none, pain: true, redness: true }, 2],
    [
      'pain along the path, redness, induration',
      { ...none, painAlongCannula: true, redness: true, induration: true },
      3,
    ],
    ['the same with a cord', { ...none, painAlongCannula: true, redness: true, induration: true, venousCord: true }, 4],
    [
      'the same with fever',
      { ...none, painAlongCannula: true, redness: true, induration: true, venousCord: true, fever: true },
      5,
    ],
  ] as const)('%s', (_name, signs, expected) => expect(phlebitisScore(signs).score).toBe(expected));
});

describe('severity grades (CTCAE: fever of 6.0; calcium bands read in 4.03)', () => {
  it.each([
    [37.9, 0, 0],
    [38.0, 0, 1],
    [39.0, 0, 1],
    [39.1, 0, 2],
    [40.0, 0, 2],
    [40.1, 10, 3],
    [40.1, 25, 4],
  ] as const)('%f degrees, %i h above 40: grade %i', (temperature, hours, grade) =>
    expect(feverGrade(temperature, hours)).toBe(grade),
  );
  it.each([
    [2.2, 0],
    [2.0, 1],
    [1.99, 2],
    [1.75, 2],
    [1.74, 3],
    [1.5, 3],
    [1.49, 4],
  ] as const)('calcium %f: grade %i (lower limit 2.20)', (calcium, grade) =>
    expect(lowCalciumGrade(calcium, 2.2)).toBe(grade),
  );
});

describe('paracetamol by weight (one published UK policy, NHS Telford 2018)', () => {
  it.each([
    [40, 2],
    [41, 3],
    [49.9, 3],
    [50, 4],
  ])('%f kg: at most %i g a day', (weight, grams) => expect(paracetamolFor(weight, false)?.mostGramsADay).toBe(grams));
  it('gives no figure for an unknown weight, under 33 kg, or with liver risk: a prescriber is asked', () => {
    expect(paracetamolFor(undefined, false)).toBeUndefined();
    expect(paracetamolFor(32, false)).toBeUndefined();
    expect(paracetamolFor(70, true)).toBeUndefined();
  });
});
