/** What was entered of one sample, and the entries it becomes. */
import { type Analyte, type KindName, analytes, mineralLimits } from '@twelvemonth/clinical';
import type { TypedQuantity } from '../../fields/typed-quantity.ts';

export type SampleEntered = {
  readonly on: string | undefined;
  readonly values: Readonly<Partial<Record<Analyte, TypedQuantity>>>;
  /** The laboratory's interval for the calcium that was reported. */
  readonly low: string;
  readonly high: string;
  /** The one limit a mineral test is compared with, as printed. */
  readonly mineralLimits: Readonly<Partial<Record<Mineral, string>>>;
  readonly laboratory: string;
  readonly acute: 'yes' | 'no' | undefined;
  readonly weight: TypedQuantity;
};
export type Mineral = keyof typeof mineralLimits;
export const isMineral = (analyte: Analyte): analyte is Mineral => Object.hasOwn(mineralLimits, analyte);
type Line = { readonly kind: KindName; readonly body: unknown; readonly effectiveAt: string };

const quantity = ({ comparator, value, unit }: TypedQuantity) => ({
  comparator,
  value: value.trim(),
  ...(unit === undefined ? {} : { unit }),
});
/** A limit as the laboratory printed it, with a point for the decimals. */
const printed = (limit: string): string => limit.trim().replace(',', '.');
const entered = (typed: TypedQuantity | undefined): typed is TypedQuantity =>
  typed !== undefined && typed.value.trim() !== '';

export function sampleLines(sample: SampleEntered): readonly Line[] {
  const effectiveAt = sample.on ?? '';
  const results = analytes.flatMap((analyte): Line[] => {
    const typed = sample.values[analyte];
    if (!entered(typed)) return [];
    const limits = analyte === 'adjusted calcium' || analyte === 'calcium';
    const mineralLimit = isMineral(analyte) ? printed(sample.mineralLimits[analyte] ?? '') : '';
    const body = {
      analyte,
      quantity: quantity(typed),
      ...(sample.laboratory.trim() === '' ? {} : { laboratory: sample.laboratory.trim() }),
      ...(limits && printed(sample.low) !== '' ? { referenceLow: printed(sample.low) } : {}),
      ...(limits && printed(sample.high) !== '' ? { referenceHigh: printed(sample.high) } : {}),
      ...(isMineral(analyte) && mineralLimit !== '' ? { [mineralLimits[analyte]]: mineralLimit } : {}),
      ...(sample.acute === undefined ? {} : { acuteAdmission: sample.acute === 'yes' }),
    };
    return [{ kind: 'result', body, effectiveAt }];
  });
  return entered(sample.weight)
    ? [...results, { kind: 'weight', body: { quantity: quantity(sample.weight), method: 'measured' }, effectiveAt }]
    : results;
}
