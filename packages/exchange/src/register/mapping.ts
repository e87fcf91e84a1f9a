/**
 * How one hospital's columns are read: for each column its meaning and, where it carries a number, its unit. Saved by the
 * mapping screen and given to the command line as it is.
 */
import { z } from 'zod';

/** What a column may mean. A date column belongs to the measurement it names. */
export const meanings = [
  'ignore',
  'number',
  'title',
  'family name',
  'given name',
  'full name',
  'former name',
  'birth date',
  'sex',
  'telephone',
  'address',
  'family doctor',
  'referred on',
  'referred by',
  'reason',
  'tier',
  'dose 1 date',
  'dose 2 date',
  'dose 3 date',
  'dose 4 date',
  'dose 5 date',
  'dose 6 date',
  'dose date',
  'dose medicine',
  'dose batch',
  'last dose date',
  'denosumab date',
  'bloods date',
  'creatinine',
  'creatinine date',
  'adjusted calcium',
  'calcium',
  'calcium date',
  'albumin',
  'vitamin D',
  'vitamin D date',
  'egfr',
  'weight',
  'weight date',
  'height',
  'fracture site',
  'fracture date',
  'hip repair date',
  'allergy',
  'consent',
  'dental',
  'note',
  'died on',
] as const;
export type Meaning = (typeof meanings)[number];

export const dateOrders = ['day month year', 'month day year', 'year month day', 'not known'] as const;
export type DateOrder = (typeof dateOrders)[number];

export const registerMapping = z.object({
  version: z.literal(1),
  name: z.string().min(1).max(100),
  separator: z.enum([',', ';', '\t', '|']),
  decimal: z.enum(['.', ',']),
  /** Order of day, month, year where a date is written in figures. Not known: a date that could be two dates waits. */
  dateOrder: z.enum(dateOrders),
  /** Rows of one person are told together by number. */
  rowsPerPerson: z.enum(['one', 'several']),
  /** Where the doses in this file were given: it is the unit's own list, or another hospital's. */
  dosesGiven: z.enum(['this service', 'elsewhere']).default('this service'),
  columns: z.array(z.object({ column: z.string(), meaning: z.enum(meanings), unit: z.string().optional() })),
  /** Words in cells that mean nothing is known: "n/k", "-", "not done". */
  blanks: z.array(z.string()),
});
export type RegisterMapping = z.infer<typeof registerMapping>;
