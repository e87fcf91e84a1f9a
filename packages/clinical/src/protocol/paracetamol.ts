/**
 * How much paracetamol an adult may take by mouth after the dose, by weight, as the rule sheet has it: a row for each range of
 * weight, each with its source. Guidelines disagree (docs/safety/sources.md), so the table is the unit's; without a row for the
 * weight no amount is told, and a prescriber is asked.
 *
 * Never without asking about other products that contain it, alcohol, the liver, warfarin. Not for children.
 */
import { z } from 'zod';
import { parseScaled, scaled } from '../exact/decimal.ts';
import { type Ratio, compareRatio } from '../exact/ratio.ts';
import { shortText, textField } from '../kinds/fields.ts';
import { sourceStatus } from './sourced-number.ts';

const kilograms = z.string().refine((text) => parseScaled(text) !== undefined, 'kilograms, as 50 or 40.5');
/** The pack speaks of tablets of 500 mg. */
const milligrams = z.number().int().min(500).max(1000).multipleOf(500, 'whole tablets of 500 mg: 500 or 1000');
const hours = z.number().int().min(4).max(12);

export const paracetamolRowSchema = z
  .object({
    /** "from 50 kg" */
    id: shortText,
    fromKg: kilograms,
    /** Absent: no upper end. */
    belowKg: kilograms.optional(),
    leastMilligrams: milligrams,
    mostMilligrams: milligrams,
    timesADay: z.number().int().min(1).max(6),
    /** The most in 24 hours; 4 g is the most of any label (product texts, from memory). */
    mostGramsADay: z.number().min(1).max(4),
    hoursBetween: hours,
    /** With an eGFR below this (mL/min/1.73 m2), or none known. */
    lowEgfr: z.number().int().min(0).max(90),
    hoursBetweenWithLowEgfr: hours,
    source: textField,
    status: sourceStatus,
  })
  .readonly()
  .refine(({ leastMilligrams, mostMilligrams }) => leastMilligrams <= mostMilligrams, {
    path: ['mostMilligrams'],
    message: 'the most of a dose is less than its least',
  })
  .refine(({ mostMilligrams, timesADay, mostGramsADay }) => mostMilligrams * timesADay <= mostGramsADay * 1000, {
    path: ['timesADay'],
    message: 'the doses add up to more than the most a day',
  })
  .refine(({ fromKg, belowKg }) => belowKg === undefined || scaled(fromKg) < scaled(belowKg), {
    path: ['belowKg'],
    message: 'ends before it begins',
  });
export type ParacetamolRow = z.infer<typeof paracetamolRowSchema>;

export type ParacetamolAsk = {
  readonly weightKg: Ratio | undefined;
  readonly liverRisk: boolean;
  /** mL/min/1.73 m2; undefined where none is known, which is treated as low. */
  readonly egfr: number | undefined;
};
export type ParacetamolAdvice = { readonly row: ParacetamolRow; readonly leastHoursBetween: number };

/** Undefined where no row fits, with liver risk or with an unknown weight: ask a prescriber. Of several rows the first holds. */
export function paracetamolFor(
  rows: readonly ParacetamolRow[],
  { weightKg, liverRisk, egfr }: ParacetamolAsk,
): ParacetamolAdvice | undefined {
  if (weightKg === undefined || liverRisk) return undefined;
  const row = rows.find(
    ({ fromKg, belowKg }) =>
      compareRatio(weightKg, scaled(fromKg)) >= 0 &&
      (belowKg === undefined || compareRatio(weightKg, scaled(belowKg)) < 0),
  );
  if (row === undefined) return undefined;
  const low = egfr === undefined || egfr < row.lowEgfr;
  return { row, leastHoursBetween: low ? Math.max(row.hoursBetween, row.hoursBetweenWithLowEgfr) : row.hoursBetween };
}

/** "41 kg to below 50 kg: 500 to 1000 mg, 3 times a day, 3 g in 24 hours at most" */
export const paracetamolSays = (row: ParacetamolRow): string => {
  const { fromKg, belowKg, leastMilligrams: least, mostMilligrams: most, timesADay, mostGramsADay } = row;
  const weight = belowKg === undefined ? `from ${fromKg} kg` : `${fromKg} kg to below ${belowKg} kg`;
  const dose = least === most ? `${least} mg` : `${least} to ${most} mg`;
  return `${weight}: ${dose}, ${timesADay} times a day, ${mostGramsADay} g in 24 hours at most, ${row.hoursBetween} hours between, ${row.hoursBetweenWithLowEgfr} with an eGFR below ${row.lowEgfr} or none known`;
};
