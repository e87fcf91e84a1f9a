/** A laboratory value of the record as the requirements read it, and the deciding calcium (docs/readiness.md R1, R3). */
import type { Analyte } from '../exact/quantity.ts';
import type { Uuid } from '../ledger/entry.ts';
import type { Fact } from '../record/patient-record.ts';
import type { CalciumSample, Sample } from './evidence.ts';

export function sampleFrom(fact: Fact<'result'>, signed: ReadonlySet<Uuid>, contradicted: ReadonlySet<Uuid>): Sample {
  const { quantity, acuteAdmission, referenceLow, referenceHigh } = fact.body;
  return {
    on: fact.on,
    value: quantity,
    signed: signed.has(fact.id),
    acute: acuteAdmission === true,
    contradicted: contradicted.has(fact.id),
    entry: fact.id,
    limits:
      referenceLow === undefined || referenceHigh === undefined
        ? undefined
        : { low: referenceLow, high: referenceHigh },
  };
}

export function calciumFrom(
  newest: Partial<Record<Analyte, Fact<'result'>>>,
  albumins: readonly Fact<'result'>[],
  signed: ReadonlySet<Uuid>,
  contradicted: ReadonlySet<Uuid>,
): CalciumSample | undefined {
  const adjusted = newest['adjusted calcium'];
  const total = newest.calcium;
  if (adjusted !== undefined && (total === undefined || adjusted.on >= total.on)) {
    return {
      on: adjusted.on,
      sort: 'adjusted',
      sample: sampleFrom(adjusted, signed, contradicted),
      albumin: undefined,
    };
  }
  if (total === undefined) return undefined;
  const albumin = albumins.findLast((one) => one.on === total.on);
  return {
    on: total.on,
    sort: 'total',
    sample: sampleFrom(total, signed, contradicted),
    albumin: albumin === undefined ? undefined : sampleFrom(albumin, signed, contradicted),
  };
}
