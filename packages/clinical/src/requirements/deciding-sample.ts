/** A laboratory value of the record as the requirements read it, and the deciding calcium (docs/readiness.md R1, R3). */
import { type Analyte, exactValue } from '../exact/quantity.ts';
import type { Uuid } from '../ledger/entry.ts';
import type { Day } from '../calendar/day.ts';
import type { Fact } from '../record/patient-record.ts';
import type { Sample } from './evidence.ts';

/** The deciding calcium: the laboratory's adjusted value of the newest sample date, else its total with the albumin of that date. */
export type CalciumSample = {
  readonly on: Day;
  readonly sort: 'adjusted' | 'total';
  readonly sample: Sample;
  readonly albumin: Sample | undefined;
  /** Beside an adjusted value: the total of the same day, from which our own sum may come out otherwise. */
  readonly beside?: CalciumSample | undefined;
};

type IsSigned = (result: Fact<'result'>) => boolean;

export const isSameValue = (
  { body: { quantity: a } }: Fact<'result'>,
  { body: { quantity: b } }: Fact<'result'>,
): boolean => a.unit === b.unit && a.comparator === b.comparator && exactValue(a) === exactValue(b);

export function sampleFrom(fact: Fact<'result'>, isSigned: IsSigned, contradicted: readonly Uuid[]): Sample {
  const { quantity, acuteAdmission, referenceLow, referenceHigh } = fact.body;
  return {
    on: fact.on,
    value: quantity,
    signed: isSigned(fact),
    acute: acuteAdmission === true,
    contradicted: contradicted.includes(fact.id),
    entry: fact.id,
    limits:
      referenceLow === undefined || referenceHigh === undefined
        ? undefined
        : { low: referenceLow, high: referenceHigh },
  };
}

export function calciumFrom(
  newest: ReadonlyMap<Analyte, Fact<'result'>>,
  albumins: readonly Fact<'result'>[],
  isSigned: IsSigned,
  contradicted: readonly Uuid[],
): CalciumSample | undefined {
  const adjusted = newest.get('adjusted calcium');
  const total = newest.get('calcium');
  const ofTotal = (one: Fact<'result'>): CalciumSample => {
    const albumin = albumins.findLast(({ on }) => on === one.on);
    return {
      on: one.on,
      sort: 'total',
      sample: sampleFrom(one, isSigned, contradicted),
      albumin: albumin === undefined ? undefined : sampleFrom(albumin, isSigned, contradicted),
    };
  };
  if (adjusted !== undefined && (total === undefined || adjusted.on >= total.on)) {
    return {
      on: adjusted.on,
      sort: 'adjusted',
      sample: sampleFrom(adjusted, isSigned, contradicted),
      albumin: undefined,
      beside: total?.on === adjusted.on ? ofTotal(total) : undefined,
    };
  }
  return total === undefined ? undefined : ofTotal(total);
}
