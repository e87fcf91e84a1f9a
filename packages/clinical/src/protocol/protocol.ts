/**
 * The unit's rule sheet as data: thresholds, intervals and validities, each with its source; the order of gravity in which
 * trouble is named; the questions of the day. A number may be empty where its source is silent: then it carries a
 * suggestion, and the sheet cannot be adopted until someone decides.
 */
import { z } from 'zod';
import { type Scaled, approximately, parseScaled } from '../exact/decimal.ts';
import { dateField, shortText, textField } from '../kinds/fields.ts';
import { type NumberKey, numberKeyNames } from './number-keys.ts';

export const requirementIds = [
  'identity',
  'hypersensitivity',
  'pregnancy',
  'illness',
  'symptoms',
  'kidney-function',
  'calcium',
  'vitamin-d',
  'mineral-metabolism',
  'hip-repair',
  'interval',
  'other-bone-medicines',
  'course',
  'prescription',
  'consent',
] as const;
export type RequirementId = (typeof requirementIds)[number];

const decimalText = z.string().refine((text) => parseScaled(text) !== undefined, 'a number with at most 4 decimals');

const sourcedNumber = z
  .object({
    /** Empty where the source is silent. */
    value: decimalText.nullable(),
    suggestion: decimalText.optional(),
    source: textField,
    status: z.enum([
      'read',
      'secondary',
      'from memory',
      'common practice, no source',
      'local decision',
      /** Only ever put in when an older sheet is read (upgrade.ts); never written, never signed. */
      'added by an upgrade, not signed',
    ]),
  })
  .readonly();
export type SourcedNumber = z.infer<typeof sourcedNumber>;

export const regimenSchema = z
  .object({
    id: shortText,
    title: shortText,
    medicine: z.enum(['zoledronic acid 5 mg']),
    intervalMonths: z.number().int().min(1).max(36),
    plannedDoses: z.number().int().min(1).max(6),
    source: textField,
  })
  .readonly();
export type Regimen = z.infer<typeof regimenSchema>;

export const dayQuestionSchema = z
  .object({
    id: shortText,
    asks: textField,
    /** The answer that holds the dose. */
    holdsOn: z.enum(['yes', 'no']),
    /** What a holding answer means for the verdict: put off, or ask a prescriber. */
    then: z.enum(['not ready', 'cannot say']),
    says: textField,
    /** A holding answer of an earlier day still holds until someone clears it: pain is not over because it is not mentioned. */
    staysUntilCleared: z.boolean().optional(),
    /** The prescriber's exception that passes over a holding answer while it lasts. */
    exception: z.enum(['teeth and jaw']).optional(),
  })
  .readonly();
export type DayQuestion = z.infer<typeof dayQuestionSchema>;

/** What an older sheet lacked and was given when it was read. */
export type SheetAddition = {
  /** "numbers.vitaminDFloor", "gravity", "regimens.zoledronic-acid-yearly.kind" */
  readonly path: string;
  /** In a sentence a nurse can read. */
  readonly says: string;
};

export const protocolSchema = z
  .object({
    version: shortText,
    title: shortText,
    /** Only for tests and teaching: can never be adopted by a service. */
    teachingOnly: z.boolean(),
    reviewBy: dateField,
    numbers: z
      .object(
        Object.fromEntries(numberKeyNames.map((key) => [key, sourcedNumber])) as Record<
          NumberKey,
          typeof sourcedNumber
        >,
      )
      .readonly(),
    resultDaysCounted: z.enum(['calendar days', 'working days']),
    vitaminDPolicy: z.enum(['await the level', 'load without a level']),
    hipRepairNeedsLoading: z.boolean(),
    regimens: z.array(regimenSchema).min(1).readonly(),
    /** In this order trouble is named; every requirement appears once. */
    gravity: z
      .array(z.enum(requirementIds))
      .refine(
        (ids) => new Set(ids).size === requirementIds.length && ids.length === requirementIds.length,
        'every requirement once',
      )
      .readonly(),
    dayQuestions: z.array(dayQuestionSchema).readonly(),
    cautions: z.array(textField).min(1).readonly(),
  })
  .readonly();
/** A rule sheet as written; it may have empty numbers. */
export type ProtocolSheet = z.infer<typeof protocolSchema>;

/** A rule sheet without an empty number, ready for the engine: whole numbers and exact decimals at hand. */
export type Protocol = {
  readonly sheet: ProtocolSheet;
  readonly version: string;
  /** What the two who signed this version have not seen: filled in when an older sheet was read. */
  readonly added: readonly SheetAddition[];
  /** As a float: for days, months, counts. */
  readonly number: Readonly<Record<NumberKey, number>>;
  /** Exact: for every threshold a result is compared with. */
  readonly exact: Readonly<Record<NumberKey, Scaled>>;
};

export type EmptyNumber = { readonly key: NumberKey; readonly suggestion: string | undefined };

/** Names of the numbers that are still empty. */
export const emptyNumbers = (sheet: ProtocolSheet): readonly EmptyNumber[] =>
  numberKeyNames
    .filter((key) => sheet.numbers[key].value === null)
    .map((key) => ({ key, suggestion: sheet.numbers[key].suggestion }));

/** Makes a sheet usable; answers with the empty numbers instead if there are any. */
export function protocolFrom(
  sheet: ProtocolSheet,
  added: readonly SheetAddition[] = [],
): { readonly protocol: Protocol } | { readonly empty: readonly EmptyNumber[] } {
  const empty = emptyNumbers(sheet);
  if (empty.length > 0) return { empty };
  const exact = {} as Record<NumberKey, Scaled>;
  const number = {} as Record<NumberKey, number>;
  for (const key of numberKeyNames) {
    const value = parseScaled(sheet.numbers[key].value ?? '');
    if (value === undefined) throw new RangeError(`protocol ${sheet.version}: ${key} was never parsed`);
    exact[key] = value;
    number[key] = approximately(value);
  }
  return { protocol: { sheet, version: sheet.version, added, number, exact } };
}

export const regimenNamed = (protocol: Protocol, id: string): Regimen | undefined =>
  protocol.sheet.regimens.find((regimen) => regimen.id === id);

/** Protocol versions by the day from which each is in force, ascending. A verdict for a date uses the one in force then. */
export type ProtocolTimeline = readonly { readonly from: number; readonly protocol: Protocol }[];
