/** What a deciding calcium is worth: its adjusted value, the limits it meets, and how that is shown (docs/readiness.md R3). */
import { type Scaled, parseScaled, scaledText } from '../exact/decimal.ts';
import { type Comparator, exactValue, quantityText } from '../exact/quantity.ts';
import { type Ratio, compareRatio, ratioOf, ratioTextBeside } from '../exact/ratio.ts';
import { adjustedCalciumMmolPerL } from '../formulas/adjusted-calcium.ts';
import { albuminGPerL, calciumMmolPerL } from '../formulas/units.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Threshold, Working } from '../readiness/working.ts';
import type { CalciumSample, Sample } from './evidence.ts';

export type CalciumValue = {
  readonly value: Ratio;
  readonly comparator: Comparator;
  readonly unit: string;
  readonly low: Scaled;
  readonly high: Scaled;
  /** Where the limits come from. */
  readonly limits: Threshold[];
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
          limits: [{ key: 'calciumLow' }, { key: 'calciumHigh' }],
        }
      : {
          value,
          comparator,
          unit,
          low: exact.calciumLowMgPerDl,
          high: exact.calciumHighMgPerDl,
          limits: [{ key: 'calciumLowMgPerDl' }, { key: 'calciumHighMgPerDl' }],
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
    limits: [
      { key: 'calciumLow' },
      { key: 'calciumHigh' },
      { key: 'calciumAdjustSlope' },
      { key: 'calciumAdjustAlbumin' },
    ],
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

export function calciumInputs({ sort, sample, albumin }: CalciumSample): Working['inputs'] {
  const input = (label: string, of: Sample): Working['inputs'][number] => ({
    label,
    text: typeof of.value === 'string' ? of.value : quantityText(of.value),
    on: of.on,
    ...(of.entry === undefined ? {} : { entry: of.entry }),
  });
  if (sort === 'adjusted') return [input('calcium, adjusted by the laboratory', sample)];
  return [input('calcium, total', sample), ...(albumin === undefined ? [] : [input('albumin', albumin)])];
}

export function calciumPutIn({ sample, albumin }: CalciumSample, { exact }: Protocol): string {
  if (typeof sample.value === 'string' || albumin === undefined || typeof albumin.value === 'string') return '';
  return `${quantityText(sample.value)} + ${scaledText(exact.calciumAdjustSlope)} x (${scaledText(exact.calciumAdjustAlbumin)} - albumin ${quantityText(albumin.value)})`;
}
