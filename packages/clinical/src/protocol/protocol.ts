/**
 * The unit's rule sheet as data: thresholds, intervals and validities, each with its source; the order of gravity in which
 * trouble is named; the questions of the day. A number may be empty where its source is silent: then it carries a
 * suggestion, and the sheet cannot be adopted until someone decides.
 */
import { z } from 'zod';
import { type Scaled, approximately, parseScaled } from '../exact/decimal.ts';
import { dateField, shortText, textField } from '../kinds/fields.ts';
import { carryOnSchema } from './carry-on.ts';
import { paracetamolRowSchema } from './paracetamol.ts';
import { dayQuestionSchema } from './day-question.ts';
import { homeDoseRules } from './home-doses.ts';
import { type NumberKey, numberKeyNames } from './number-keys.ts';
import { type Regimen, regimenSchema } from './regimen.ts';
import { type RequirementId, requirementIds } from './requirement-ids.ts';
import { type SourcedNumber, sourcedNumber } from './sourced-number.ts';
import { switchRuleSchema } from './switch-rule.ts';

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
    /** Whether a dental check in date is demanded, or teeth and jaw are asked about only. Guidelines differ. */
    dentalCheck: z.enum(['asked', 'demanded']),
    /**
     * Whether a pharmacist verifies a prescription before anything is prepared. Common practice, no source: services differ, the
     * unit decides. A sheet that says nothing was signed without it.
     */
    pharmacyVerification: z.enum(['not asked for', 'before preparation']).default('not asked for'),
    /** Whether one practitioner gives a dose at home alone. A sheet that says nothing allows it to nobody. */
    homeDoseByOne: z.enum(homeDoseRules).default('not allowed'),
    /** Which weight decides the clearance; the label says actual. */
    weightThatDecides: z.enum(['actual', 'ideal', 'adjusted']),
    /** The first is what is meant where nothing is prescribed. */
    regimens: z.array(regimenSchema).min(1).readonly(),
    /** Of several rows that fit the first decides. */
    switches: z
      .array(switchRuleSchema)
      .refine((rows) => {
        const pairs = rows.flatMap(({ from, to }) => to.map((one) => `${from} to ${one}`));
        return new Set(pairs).size === pairs.length;
      }, 'one medicine after another stands in one row only')
      .readonly()
      .default([]),
    /** What speaks for carrying on after the planned doses. */
    carryOn: z
      .array(carryOnSchema)
      .refine((all) => new Set(all.map(({ id }) => id)).size === all.length, 'each once')
      .readonly(),
    /** How much paracetamol a pack may name, by weight; without rows it names none. Decides nothing about a dose. */
    paracetamol: z
      .array(paracetamolRowSchema)
      .refine((all) => new Set(all.map(({ id }) => id)).size === all.length, 'each once')
      .readonly()
      .default([]),
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
    /** Why this unit decided otherwise than the sheet it began from, by the place of what has no source of its own. */
    reasons: z.record(z.string(), textField).readonly().optional(),
  })
  .readonly();
/** A rule sheet as written; it may have empty numbers. */
export type ProtocolSheet = z.infer<typeof protocolSchema>;

/** A rule sheet without an empty number, ready for the engine: whole numbers and exact decimals at hand. */
export type Protocol = {
  /** As adopted, with the regimen's own questions of the day among the others. */
  readonly sheet: ProtocolSheet;
  /** What the numbers are for: the prescribed regimen, or the sheet's first. */
  readonly regimen: Regimen;
  readonly leavesOut: ReadonlySet<RequirementId>;
  /** The same sheet for each of its regimens. */
  readonly under: ReadonlyMap<string, Protocol>;
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
  const under = new Map<string, Protocol>();
  for (const regimen of sheet.regimens) under.set(regimen.id, compiled(sheet, added, regimen, under));
  const [first] = under.values();
  if (first === undefined) throw new RangeError(`protocol ${sheet.version} has no regimen`);
  return { protocol: first };
}

function compiled(
  sheet: ProtocolSheet,
  added: readonly SheetAddition[],
  regimen: Regimen,
  under: ReadonlyMap<string, Protocol>,
): Protocol {
  const exact = {} as Record<NumberKey, Scaled>;
  const number = {} as Record<NumberKey, number>;
  for (const key of numberKeyNames) {
    const value = parseScaled(regimen.numbers[key]?.value ?? sheet.numbers[key].value ?? '');
    if (value === undefined) throw new RangeError(`protocol ${sheet.version}: ${key} was never parsed`);
    exact[key] = value;
    number[key] = approximately(value);
  }
  return {
    sheet:
      regimen.dayQuestions.length === 0
        ? sheet
        : { ...sheet, dayQuestions: [...sheet.dayQuestions, ...regimen.dayQuestions] },
    regimen,
    leavesOut: new Set(regimen.leavesOut),
    under,
    version: sheet.version,
    added,
    number,
    exact,
  };
}

/** The protocol as it stands for a prescribed regimen; for its first where none is prescribed or it knows none of that name. */
export const underRegimen = (protocol: Protocol, id: string | undefined): Protocol =>
  (id === undefined ? undefined : protocol.under.get(id)) ?? firstOf(protocol);

function firstOf({ under, version }: Protocol): Protocol {
  for (const first of under.values()) return first;
  throw new RangeError(`protocol ${version} has no regimen`);
}

export const regimenNamed = (protocol: Protocol, id: string): Regimen | undefined => protocol.under.get(id)?.regimen;

/** A number as it was decided for the regimen, with its source. */
export const numberOf = ({ sheet, regimen }: Protocol, key: NumberKey): SourcedNumber =>
  regimen.numbers[key] ?? sheet.numbers[key];

/** Protocol versions by the day from which each is in force, ascending. A verdict for a date uses the one in force then. */
export type ProtocolTimeline = readonly { readonly from: number; readonly protocol: Protocol }[];
