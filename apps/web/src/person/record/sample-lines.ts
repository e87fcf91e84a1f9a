/** What was entered of one sample, and the entries it becomes. */
import { type Analyte, type KindName, analytes } from '@twelvemonth/clinical';
import type { TypedQuantity } from '../../fields/typed-quantity.ts';

export type SampleEntered = {
  readonly on: string | undefined;
  readonly values: Readonly<Partial<Record<Analyte, TypedQuantity>>>;
  /** The laboratory's interval for the calcium that was reported. */
  readonly low: string;
  readonly high: string;
  readonly laboratory: string;
  readonly acute: 'yes' | 'no' | undefined;
  readonly weight: TypedQuantity;
};
type Line = { readonly kind: KindName; readonly body: unknown; readonly effectiveAt: string };

const quantity = ({ comparator, value, unit }: TypedQuantity) => ({
  comparator,
  value: value.trim(),
  ...(unit === undefined ? {} : { unit }),
});
const entered = (typed: TypedQuantity | undefined): typed is TypedQuantity =>
  typed !== undefined && typed.value.trim() !== '';

export function sampleLines(sample: SampleEntered): readonly Line[] {
  const effectiveAt = sample.on ?? '';
  const results = analytes.flatMap((analyte): Line[] => {
    const typed = sample.values[analyte];
    if (!entered(typed)) return [];
    const limits = analyte === 'adjusted calcium' || analyte === 'calcium';
    const body = {
      analyte,
      quantity: quantity(typed),
      ...(sample.laboratory.trim() === '' ? {} : { laboratory: sample.laboratory.trim() }),
      ...(limits && sample.low.trim() !== '' ? { referenceLow: sample.low.trim().replace(',', '.') } : {}),
      ...(limits && sample.high.trim() !== '' ? { referenceHigh: sample.high.trim().replace(',', '.') } : {}),
      ...(sample.acute === undefined ? {} : { acuteAdmission: sample.acute === 'yes' }),
    };
    return [{ kind: 'result', body, effectiveAt }];
  });
  return entered(sample.weight)
    ? [...results, { kind: 'weight', body: { quantity: quantity(sample.weight), method: 'measured' }, effectiveAt }]
    : results;
}
