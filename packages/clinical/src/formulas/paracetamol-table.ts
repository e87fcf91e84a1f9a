/**
 * How much paracetamol an adult may take by mouth after the dose, by weight.
 *
 * Guidelines disagree (docs/safety/sources.md): UK labelling has 500 mg to 1 g every 4 to 6 hours and 4 g a day from 50 kg;
 * UK practice lowers it below that or with liver risk; Australian guidance does not routinely. The rows here are one published
 * UK policy (NHS Telford 2018, read), where also an eGFR below 30 asks for 6 hours between doses; a unit's own table goes
 * before it. Another UK wording, 15 mg/kg a dose and 60 mg/kg a day, is the intravenous licence's (from memory).
 *
 * Never without asking about other products that contain it, alcohol, the liver, warfarin. Not for children.
 */
import { type Scaled, scaled } from '../exact/decimal.ts';
import { type Ratio, compareRatio, ratioAsNumber } from '../exact/ratio.ts';

export type ParacetamolRow = {
  readonly fromKg: Scaled;
  /** Undefined: no upper end. */
  readonly belowKg: Scaled | undefined;
  readonly doseMilligrams: readonly [least: number, most: number];
  readonly timesADay: number;
  readonly mostGramsADay: number;
};
/** Between the policy's "up to 40 kg" and "41 to 49 kg" the lower row holds. */
export const paracetamolRows: readonly ParacetamolRow[] = [
  { fromKg: scaled('33'), belowKg: scaled('41'), doseMilligrams: [500, 500], timesADay: 4, mostGramsADay: 2 },
  { fromKg: scaled('41'), belowKg: scaled('50'), doseMilligrams: [500, 1000], timesADay: 3, mostGramsADay: 3 },
  { fromKg: scaled('50'), belowKg: undefined, doseMilligrams: [500, 1000], timesADay: 4, mostGramsADay: 4 },
];

export type ParacetamolAsk = {
  readonly weightKg: Ratio | undefined;
  readonly liverRisk: boolean;
  /** mL/min/1.73 m2; undefined where none is known, which is treated as low. */
  readonly egfr: number | undefined;
};
export type ParacetamolAdvice = ParacetamolRow & { readonly leastHoursBetween: 4 | 6 };

const LOW_EGFR = 30;

/** Undefined below the table, with liver risk or with an unknown weight: ask a prescriber. */
export function paracetamolFor(
  { weightKg, liverRisk, egfr }: ParacetamolAsk,
  rows: readonly ParacetamolRow[] = paracetamolRows,
): ParacetamolAdvice | undefined {
  if (weightKg === undefined || liverRisk) return undefined;
  const row = rows.find(
    ({ fromKg, belowKg }) =>
      compareRatio(weightKg, fromKg) >= 0 && (belowKg === undefined || compareRatio(weightKg, belowKg) < 0),
  );
  return row && { ...row, leastHoursBetween: egfr === undefined || egfr < LOW_EGFR ? 6 : 4 };
}

/** mg a dose by the other UK wording, to show beside the row. */
export const fifteenPerKilogram = (weightKg: Ratio): number => 15 * ratioAsNumber(weightKg);
