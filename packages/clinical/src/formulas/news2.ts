/**
 * National Early Warning Score 2, Royal College of Physicians 2017. An early sign that someone is becoming ill; not a test
 * of fitness for an infusion: the protocol's own put-off values decide that. Adults from 16 years, not in pregnancy.
 * Scale 2 for saturation only on a recorded clinician's decision (hypercapnic respiratory failure, target 88-92 %).
 * A parameter missing: no total. A temperature is a reading to a tenth of a degree; anything finer counts as not measured.
 *
 * The chart's bands are the college's (free to use with acknowledgement); the frequencies of observation it gives for wards
 * are not used here.
 */
import { tenthsOfDegree } from './temperature.ts';

export type Observation = {
  readonly breathsPerMinute: number;
  readonly saturationPercent: number;
  readonly saturationScale: 1 | 2;
  readonly onOxygen: boolean;
  readonly systolicMmHg: number;
  readonly pulsePerMinute: number;
  /** Alert; new confusion, responds to voice, to pain, unresponsive. Chronic confusion is not new. */
  readonly consciousness: 'A' | 'C' | 'V' | 'P' | 'U';
  /** To one decimal, as measured. */
  readonly temperatureCelsius: number;
};
export type Parameter = keyof Omit<Observation, 'saturationScale'>;

/** It was made for adults from this age. */
export const news2FromYears = 16;

export const news2Source = 'National Early Warning Score (NEWS) 2, Royal College of Physicians 2017';

export type News2 =
  | {
      readonly complete: true;
      readonly total: number;
      readonly parts: Readonly<Record<Parameter, number>>;
      readonly singleThree: boolean;
      readonly risk: 'low' | 'low to medium' | 'medium' | 'high';
    }
  | { readonly complete: false; readonly missing: readonly Parameter[] };

/** Rows of the chart: a value up to and including the first number scores the second. */
type Band = readonly [upTo: number, score: number];
function score(value: number, bands: readonly Band[]): number {
  const band = bands.find(([upTo]) => value <= upTo);
  if (band === undefined) throw new RangeError(`not a measurement: ${value}`);
  return band[1];
}

const breaths: readonly Band[] = [
  [8, 3],
  [11, 1],
  [20, 0],
  [24, 2],
  [Infinity, 3],
];
const saturation1: readonly Band[] = [
  [91, 3],
  [93, 2],
  [95, 1],
  [Infinity, 0],
];
const saturation2Low: readonly Band[] = [
  [83, 3],
  [85, 2],
  [87, 1],
  [92, 0],
];
const saturation2OnOxygen: readonly Band[] = [
  [94, 1],
  [96, 2],
  [Infinity, 3],
];
const systolic: readonly Band[] = [
  [90, 3],
  [100, 2],
  [110, 1],
  [219, 0],
  [Infinity, 3],
];
const pulse: readonly Band[] = [
  [40, 3],
  [50, 1],
  [90, 0],
  [110, 1],
  [130, 2],
  [Infinity, 3],
];
/** In tenths of a degree, so that 38.0 and 38.1 are told apart exactly. */
const temperatureTenths: readonly Band[] = [
  [350, 3],
  [360, 1],
  [380, 0],
  [390, 1],
  [Infinity, 2],
];

function saturation(percent: number, scale: 1 | 2, onOxygen: boolean): number {
  if (scale === 1) return score(percent, saturation1);
  if (percent <= 92) return score(percent, saturation2Low);
  return onOxygen ? score(percent, saturation2OnOxygen) : 0;
}

const needed: readonly Parameter[] = [
  'breathsPerMinute',
  'saturationPercent',
  'onOxygen',
  'systolicMmHg',
  'pulsePerMinute',
  'consciousness',
  'temperatureCelsius',
];

/** 7 and more high, 5 and 6 medium; below that a 3 in any one parameter is low to medium. */
const riskOf = (total: number, singleThree: boolean): 'low' | 'low to medium' | 'medium' | 'high' =>
  total >= 7 ? 'high' : total >= 5 ? 'medium' : singleThree ? 'low to medium' : 'low';

/** What was measured so far. */
type Measured = { readonly [Name in keyof Observation]?: Observation[Name] | undefined };

const isWhole = (o: Measured, missing: readonly Parameter[]): o is Observation => missing.length === 0;

/** The score of a set of observations; which parameters are missing if it is not whole. Without a scale: scale 1. */
export function news2(observed: Measured): News2 {
  const tenths = tenthsOfDegree(observed.temperatureCelsius ?? Number.NaN);
  const missing = needed.filter((parameter) =>
    parameter === 'temperatureCelsius' ? tenths === undefined : observed[parameter] === undefined,
  );
  if (tenths === undefined || !isWhole(observed, missing)) return { complete: false, missing };
  const parts: Record<Parameter, number> = {
    breathsPerMinute: score(observed.breathsPerMinute, breaths),
    saturationPercent: saturation(observed.saturationPercent, observed.saturationScale ?? 1, observed.onOxygen),
    onOxygen: observed.onOxygen ? 2 : 0,
    systolicMmHg: score(observed.systolicMmHg, systolic),
    pulsePerMinute: score(observed.pulsePerMinute, pulse),
    consciousness: observed.consciousness === 'A' ? 0 : 3,
    temperatureCelsius: score(tenths, temperatureTenths),
  };
  const values = Object.values(parts);
  const total = values.reduce((sum, part) => sum + part, 0);
  const singleThree = values.includes(3);
  return { complete: true, total, parts, singleThree, risk: riskOf(total, singleThree) };
}
