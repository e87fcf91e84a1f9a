/**
 * How much paracetamol an adult may take after the dose, by weight. Guidelines disagree (clinical facts 2n): UK practice
 * lowers it under 50 kg or with liver risk, Australian guidance does not routinely. The rows here are one published UK policy
 * (NHS Telford 2018); a unit's own table is protocol data. Ask first about other products that contain it, alcohol and liver.
 */
export type ParacetamolRow = {
  readonly fromKg: number;
  readonly belowKg: number;
  readonly doseMilligrams: readonly [least: number, most: number];
  readonly timesADay: number;
  readonly mostGramsADay: number;
};
const paracetamolRows: readonly ParacetamolRow[] = [
  { fromKg: 33, belowKg: 41, doseMilligrams: [500, 500], timesADay: 4, mostGramsADay: 2 },
  { fromKg: 41, belowKg: 50, doseMilligrams: [500, 1000], timesADay: 3, mostGramsADay: 3 },
  { fromKg: 50, belowKg: Infinity, doseMilligrams: [500, 1000], timesADay: 4, mostGramsADay: 4 },
];

/** The row for a weight in kg; undefined below the table, with liver risk or with an unknown weight: ask a prescriber. */
export const paracetamolFor = (weightKg: number | undefined, liverRisk: boolean): ParacetamolRow | undefined =>
  weightKg === undefined || liverRisk
    ? undefined
    : paracetamolRows.find((row) => weightKg >= row.fromKg && weightKg < row.belowKg);
