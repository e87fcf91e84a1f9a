/**
 * What measured numbers can be: outside `possible` a value cannot be in its unit, outside `usual` it is remarked on. Every
 * band: common practice, no source. They catch slips of unit and of the decimal point, nothing finer, and are no clinical
 * limits; those are the protocol's.
 */
import { type Analyte, type Quantity, quantity } from './quantity.ts';
import { type Ratio, compareRatios } from './ratio.ts';

export type Measure = Analyte | 'weight' | 'height';

export type Band = { readonly possible: readonly [number, number]; readonly usual: readonly [number, number] };

export const plausibleBands: Readonly<Partial<Record<Measure, Readonly<Record<string, Band>>>>> = {
  creatinine: {
    'umol/L': { possible: [25, 2500], usual: [35, 400] },
    'mg/dL': { possible: [0.2, 24], usual: [0.4, 4.5] },
  },
  'adjusted calcium': {
    'mmol/L': { possible: [1, 4], usual: [1.8, 3] },
    'mg/dL': { possible: [4.5, 16], usual: [7.2, 12] },
  },
  calcium: {
    'mmol/L': { possible: [1, 4], usual: [1.7, 3] },
    'mg/dL': { possible: [4.5, 16], usual: [6.8, 12] },
  },
  albumin: {
    'g/L': { possible: [10, 65], usual: [20, 55] },
    'g/dL': { possible: [1, 6.5], usual: [2, 5.5] },
  },
  // The two units overlap in nearly every value a person can have: a vitamin D without a unit stays without one.
  'vitamin D': {
    'nmol/L': { possible: [2, 800], usual: [10, 250] },
    'ng/mL': { possible: [1, 320], usual: [4, 100] },
  },
  egfr: { 'mL/min/1.73m2': { possible: [2, 200], usual: [15, 130] } },
  weight: {
    kg: { possible: [25, 300], usual: [35, 125] },
    lb: { possible: [55, 660], usual: [77, 275] },
  },
  height: {
    cm: { possible: [100, 220], usual: [135, 200] },
    in: { possible: [40, 87], usual: [53, 79] },
  },
};

const within = (value: number, [low, high]: readonly [number, number]): boolean => value >= low && value <= high;

/** How a value sits in a unit, and which other unit of the measure it would sit well in. */
export function plausibility(
  measure: Measure,
  unit: string,
  value: number,
): { readonly sits: 'usual' | 'unusual' | 'impossible'; readonly betterAs: string | undefined } {
  const bands = plausibleBands[measure];
  const band = bands?.[unit];
  if (bands === undefined || band === undefined || within(value, band.usual))
    return { sits: 'usual', betterAs: undefined };
  const betterAs = Object.entries(bands).find(([other, of]) => other !== unit && within(value, of.usual))?.[0];
  return { sits: within(value, band.possible) ? 'unusual' : 'impossible', betterAs };
}

/** Whether a body can have a value: as a number of another unit, or with its point out of place, it would decide a dose. */
export function isPossibleIn(
  measure: Measure,
  unit: string,
  convert: (q: Quantity) => Ratio | undefined,
): (value: Ratio) => boolean {
  const ends = plausibleBands[measure]?.[unit]?.possible.map((end) => convert(quantity(String(end), unit)));
  const [least, most] = ends ?? [];
  if (least === undefined || most === undefined) throw new RangeError(`no band of ${measure} in ${unit}`);
  return (value) => compareRatios(value, least) >= 0 && compareRatios(value, most) <= 0;
}

/** Units in which nearly all of these values would be usual. */
export function unitsThatFit(measure: Measure, values: readonly number[]): readonly string[] {
  if (values.length === 0) return [];
  return Object.entries(plausibleBands[measure] ?? {})
    .filter(([, band]) => values.filter((value) => within(value, band.usual)).length >= values.length * 0.9)
    .map(([unit]) => unit);
}

/** Weights of one person that differ by more than this share are remarked on. Common practice, no source. */
export const weightJumpShare = 0.15;
