/**
 * A measured value as it was reported: comparator, number text and unit are kept as written; the exact value rides along.
 * "<20" is not 20 and is never read as 20.
 */
import { z } from 'zod';
import { type Scaled, parseScaled } from './decimal.ts';

export const unitsOf = {
  creatinine: ['umol/L', 'mg/dL'],
  'adjusted calcium': ['mmol/L', 'mg/dL'],
  calcium: ['mmol/L', 'mg/dL'],
  albumin: ['g/L', 'g/dL'],
  'vitamin D': ['nmol/L', 'ng/mL'],
  egfr: ['mL/min/1.73m2'],
  'alkaline phosphatase': ['U/L'],
  phosphate: ['mmol/L', 'mg/dL'],
  magnesium: ['mmol/L', 'mg/dL'],
  'parathyroid hormone': ['pmol/L', 'pg/mL'],
  CTX: ['ng/L', 'ug/L', 'pg/mL', 'ng/mL'],
  P1NP: ['ug/L', 'ng/mL'],
} as const;

/** What a laboratory result may be of. */
export type Analyte = keyof typeof unitsOf;
export const analytes = Object.keys(unitsOf) as [Analyte, ...Analyte[]];
export type LaboratoryUnit = (typeof unitsOf)[Analyte][number];
export const weightUnits = ['kg', 'lb'] as const;
export const heightUnits = ['cm', 'in'] as const;
export const densityUnits = ['g/cm2'] as const;

export const comparators = ['', '<', '<=', '>', '>='] as const;
export type Comparator = (typeof comparators)[number];

const quantityWith = <const Units extends readonly [string, ...string[]]>(units: Units) =>
  z
    .object({
      comparator: z.enum(comparators),
      /** The number exactly as reported, point as decimal sign. */
      value: z
        .string()
        .refine((text) => parseScaled(text) !== undefined, 'a number with at most 4 decimals, such as 88 or 2.20'),
      unit: z.enum(units, {
        error: ({ input }) =>
          input === undefined || input === ''
            ? `the unit is missing, and is never guessed: ${units.join(', ')}`
            : `${typeof input === 'string' ? input : 'what was sent'} is not one of its units: ${units.join(', ')}`,
      }),
    })
    .readonly();

export const laboratoryQuantity = quantityWith([
  'umol/L',
  'mg/dL',
  'mmol/L',
  'g/L',
  'g/dL',
  'nmol/L',
  'ng/mL',
  'mL/min/1.73m2',
  'U/L',
  'pmol/L',
  'pg/mL',
  'ng/L',
  'ug/L',
]);
export const weightQuantity = quantityWith(weightUnits);
export const heightQuantity = quantityWith(heightUnits);
export const densityQuantity = quantityWith(densityUnits);

export type Quantity<Unit extends string = string> = {
  readonly comparator: Comparator;
  readonly value: string;
  readonly unit: Unit;
};

export const quantity = <Unit extends string>(
  value: string,
  unit: Unit,
  comparator: Comparator = '',
): Quantity<Unit> => ({
  comparator,
  value,
  unit,
});

export const quantityText = (q: Quantity): string => `${q.comparator}${q.value} ${q.unit}`;

/** The exact value, comparator aside. The body was parsed, so the number is well formed. */
export function exactValue(q: Quantity): Scaled {
  const value = parseScaled(q.value);
  if (value === undefined) throw new RangeError(`a quantity that was never parsed: ${q.value}`);
  return value;
}
