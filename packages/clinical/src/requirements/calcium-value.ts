/** What a deciding calcium is worth: its adjusted value, the limits it meets, and how that is shown (docs/readiness.md R3). */
import { type Scaled, parseScaled, scaledText } from '../exact/decimal.ts';
import { type Comparator, exactValue, quantityText } from '../exact/quantity.ts';
import { type Ratio, compareRatio, ratioOf, ratioTextBeside } from '../exact/ratio.ts';
import { adjustedCalciumMmolPerL } from '../formulas/adjusted-calcium.ts';
import { albuminGPerL, calciumMmolPerL } from '../formulas/units.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Threshold, Working } from '../readiness/working.ts';
import type { CalciumSample } from './deciding-sample.ts';
import type { Sample } from './evidence.ts';

export type CalciumValue = {
  readonly value: Ratio;
  readonly comparator: Comparator;
  readonly unit: string;
  readonly low: Scaled;
  readonly high: Scaled;
  /** Where the limits come from. */
  readonly limits: readonly Threshold[];
};

/** Albumin that can adjust a total: a plain number above nought in a known unit, not acute, the only one of its day. */
export function albuminOf(calcium: CalciumSample): { readonly sample: Sample; readonly gPerL: Ratio } | undefined {
  const sample = calcium.albumin;
  if (
    sample === undefined ||
    sample.acute ||
    sample.contradicted ||
    typeof sample.value === 'string' ||
    sample.value.comparator !== ''
  )
    return undefined;
  const gPerL = albuminGPerL(sample.value);
  return gPerL === undefined ? undefined : { sample, gPerL };
}

function ownLimits(sample: Sample): { readonly low: Scaled; readonly high: Scaled } | undefined {
  const low = sample.limits === undefined ? undefined : parseScaled(sample.limits.low);
  const high = sample.limits === undefined ? undefined : parseScaled(sample.limits.high);
  return low === undefined || high === undefined ? undefined : { low, high };
}

const inMillimoles: readonly Threshold[] = [{ key: 'calciumLow' }, { key: 'calciumHigh' }];
const inMilligrams: readonly Threshold[] = [{ key: 'calciumLowMgPerDl' }, { key: 'calciumHighMgPerDl' }];
const adjustedHere: readonly Threshold[] = [
  ...inMillimoles,
  { key: 'calciumAdjustSlope' },
  { key: 'calciumAdjustAlbumin' },
];

/** The value that meets the limits; undefined where two of one day differ, the unit is not calcium's or the albumin is missing. */
export function calciumValueOf(calcium: CalciumSample, protocol: Protocol): CalciumValue | undefined {
  const { sample } = calcium;
  if (sample.contradicted || typeof sample.value === 'string') return undefined;
  const { exact } = protocol;
  const { comparator, unit } = sample.value;
  if (calcium.sort === 'adjusted') {
    if (unit !== 'mmol/L' && unit !== 'mg/dL') return undefined;
    const value = ratioOf(exactValue(sample.value));
    const own = ownLimits(sample);
    if (own !== undefined) {
      return {
        value,
        comparator,
        unit,
        ...own,
        limits: [
          {
            label: "the laboratory's own limits",
            text: `${scaledText(own.low)} - ${scaledText(own.high)} ${unit}`,
            source: 'printed with the result',
          },
        ],
      };
    }
    return unit === 'mmol/L'
      ? {
          value,
          comparator,
          unit,
          low: exact.calciumLow,
          high: exact.calciumHigh,
          limits: inMillimoles,
        }
      : {
          value,
          comparator,
          unit,
          low: exact.calciumLowMgPerDl,
          high: exact.calciumHighMgPerDl,
          limits: inMilligrams,
        };
  }
  const total = calciumMmolPerL(sample.value);
  const albumin = albuminOf(calcium);
  if (total === undefined || albumin === undefined) return undefined;
  return {
    value: adjustedCalciumMmolPerL(total, albumin.gPerL, exact.calciumAdjustSlope, exact.calciumAdjustAlbumin),
    comparator,
    unit: 'mmol/L',
    low: exact.calciumLow,
    high: exact.calciumHigh,
    limits: adjustedHere,
  };
}

export type CalciumOutcome = 'passing' | 'low' | 'high' | 'cannot be told';

export function calciumOutcome({ value, comparator, low, high }: CalciumValue): CalciumOutcome {
  const toLow = compareRatio(value, low);
  const toHigh = compareRatio(value, high);
  if (comparator === '<' || comparator === '<=') return toLow <= 0 ? 'low' : 'cannot be told';
  if (comparator === '>' || comparator === '>=') return toHigh >= 0 ? 'high' : 'cannot be told';
  return toLow < 0 ? 'low' : toHigh > 0 ? 'high' : 'passing';
}

export const calciumText = ({ value, comparator, unit, low, high }: CalciumValue): string =>
  `${comparator}${ratioTextBeside(value, 2, [low, high])} ${unit}`;

/** Clinical fact sheet 2e: the laboratory's own value counts; where our own sum falls on another side of its limits, that is shown. */
export function calciumConflict(
  { beside }: CalciumSample,
  decided: CalciumValue,
  protocol: Protocol,
): readonly string[] {
  const own = beside === undefined ? undefined : calciumValueOf(beside, protocol);
  if (beside === undefined || own === undefined || calciumOutcome(own) === calciumOutcome(decided)) return [];
  return [
    `Our own sum of that day says otherwise: ${calciumPutIn(beside, protocol)} = ${calciumText(own)}. The laboratory's adjusted value counts: ask the laboratory which is right.`,
  ];
}

function input(label: string, { value, on, entry }: Sample): Working['inputs'][number] {
  const text = typeof value === 'string' ? value : quantityText(value);
  return entry === undefined ? { label, text, on } : { label, text, on, entry };
}

export function calciumInputs({ sort, sample, albumin }: CalciumSample): Working['inputs'] {
  if (sort === 'adjusted') return [input('calcium, adjusted by the laboratory', sample)];
  return [input('calcium, total', sample), ...(albumin === undefined ? [] : [input('albumin', albumin)])];
}

export function calciumPutIn({ sample, albumin }: CalciumSample, { exact }: Protocol): string {
  if (typeof sample.value === 'string' || albumin === undefined || typeof albumin.value === 'string') return '';
  return `${quantityText(sample.value)} + ${scaledText(exact.calciumAdjustSlope)} x (${scaledText(exact.calciumAdjustAlbumin)} - albumin ${quantityText(albumin.value)})`;
}
