/**
 * Rule sheets of older versions of the product, read as the current shape. The stored text never changes. What it lacks is
 * filled in from the starter sheet and marked, so that nobody takes it for what was signed (docs/decisions/0006).
 */
import type { z } from 'zod';
import { shortText } from '../kinds/fields.ts';
import { usualDayQuestions } from './day-questions.ts';
import { isGivenBelowAnyClearance } from './medicines.ts';
import { type NumberKey, numberKeyNames, numberKeys } from './number-keys.ts';
import { dayQuestionSchema } from './day-question.ts';
import { type ProtocolSheet, type SheetAddition, protocolSchema } from './protocol.ts';
import { type Regimen, regimenSchema } from './regimen.ts';
import { requirementIds } from './requirement-ids.ts';
import type { SourcedNumber } from './sourced-number.ts';
import { starterSheet } from './starter.ts';

/** What an older sheet is completed from. */
const given = starterSheet;

export type ReadSheet =
  | { readonly sheet: ProtocolSheet; readonly added: readonly SheetAddition[] }
  /** Why it cannot be read, in a sentence. */
  | { readonly says: string };

type Fields = Readonly<Record<string, unknown>>;
const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Reads a stored sheet of this or an older version of the product; answers with what had to be added. */
export function readSheet(content: unknown): ReadSheet {
  if (!isFields(content)) return { says: 'It is not a rule sheet.' };
  const asWritten = protocolSchema.safeParse(content);
  const strangers = strangeNumbers(content);
  if (strangers.length > 0)
    return {
      says: `It holds numbers this version of the product does not know (${strangers.join(', ')}): it was written by another version.`,
    };
  if (asWritten.success) return { sheet: asWritten.data, added: [] };
  const added: SheetAddition[] = [];
  const completed = withFields(
    protocolSchema,
    {
      ...content,
      numbers: withNumbers(content['numbers'], added),
      gravity: withRequirements(content['gravity'], added),
      regimens: withEach(
        withKidneysAsked(content['regimens'], added),
        'regimens',
        regimenSchema,
        given.regimens,
        added,
      ),
      dayQuestions: withEach(content['dayQuestions'], 'dayQuestions', dayQuestionSchema, usualDayQuestions, added),
    },
    policiesGiven,
    '',
    added,
  );
  const read = protocolSchema.safeParse(completed);
  if (read.success) return { sheet: read.data, added };
  const [issue] = read.error.issues;
  return {
    says: `It does not fit a rule sheet at ${issue?.path.join('.') ?? '?'}: ${issue?.message ?? 'unreadable'}.`,
  };
}

/** Policies may be missing from an older sheet; who it is for, its name and its dates may not. */
const { version: _version, title: _title, teachingOnly: _teachingOnly, reviewBy: _reviewBy, ...policiesGiven } = given;

const strangeNumbers = ({ numbers }: Fields): readonly string[] =>
  isFields(numbers) ? Object.keys(numbers).filter((key) => !Object.hasOwn(numberKeys, key)) : [];

function withNumbers(stored: unknown, added: SheetAddition[]): unknown {
  if (!isFields(stored)) return stored;
  const missing = numberKeyNames.filter((key) => !Object.hasOwn(stored, key));
  for (const key of missing) {
    const { value } = numberGiven(key);
    added.push({
      path: `numbers.${key}`,
      says: `${numberKeys[key].means}: ${value ?? 'empty'} ${numberKeys[key].unit}`,
    });
  }
  return { ...stored, ...Object.fromEntries(missing.map((key) => [key, numberGiven(key)])) };
}

/** The starter's number, or what it suggests where its source is silent. */
function numberGiven(key: NumberKey): SourcedNumber {
  const { value, suggestion, source } = given.numbers[key];
  return { value: value ?? suggestion ?? null, source, status: 'added by an upgrade, not signed' };
}

/** A new requirement is named where the order of the product names it; one that is no more is left out. */
function withRequirements(stored: unknown, added: SheetAddition[]): unknown {
  if (!Array.isArray(stored)) return stored;
  const order = (stored as unknown[]).filter((id) => requirementIds.some((known) => known === id));
  for (const [index, id] of requirementIds.entries()) {
    if (order.includes(id)) continue;
    const before = requirementIds.slice(0, index).findLast((one) => order.includes(one));
    order.splice(before === undefined ? 0 : order.indexOf(before) + 1, 0, id);
    added.push({ path: 'gravity', says: `“${id}” is looked at, which this version did not name` });
  }
  return order;
}

/** Denosumab and romosozumab once asked nothing of the kidneys. They do, below the starter's number a prescriber decides, and both are marked. */
function withKidneysAsked(stored: unknown, added: SheetAddition[]): unknown {
  if (!Array.isArray(stored)) return stored;
  return (stored as unknown[]).map((item) => {
    if (!isFields(item) || !Array.isArray(item['leavesOut'])) return item;
    const starter = given.regimens.find(
      ({ medicine }) => medicine === item['medicine'] && isGivenBelowAnyClearance(medicine),
    );
    const leavesOut = (item['leavesOut'] as unknown[]).filter((id) => id !== 'kidney-function');
    if (starter === undefined || leavesOut.length === item['leavesOut'].length) return item;
    const id = shortText.safeParse(item['id']).data ?? '?';
    added.push({
      path: `regimens.${id}.leavesOut`,
      says: `kidney function is looked at for ${starter.medicine}; below ${starter.numbers.clearanceFloor?.value ?? '?'} mL/min a prescriber decides`,
    });
    const { belowClearanceFloor } = starter;
    return {
      ...item,
      leavesOut,
      belowClearanceFloor,
      numbers: { ...kidneyNumbers(starter), ...fieldsOf(item['numbers']) },
    };
  });
}

const kidneyNumbers = ({ numbers }: Regimen): Regimen['numbers'] =>
  Object.fromEntries(
    (['clearanceFloor', 'nearLimitCeiling'] as const).flatMap((key) => {
      const number = numbers[key];
      return number === undefined ? [] : [[key, { ...number, status: 'added by an upgrade, not signed' }] as const];
    }),
  );
const fieldsOf = (value: unknown): Fields => (isFields(value) ? value : {});

/** Each item as written if it fits; else with the fields it lacks, from the starter's item of the same id. */
function withEach(
  stored: unknown,
  list: string,
  schema: z.ZodType,
  starters: readonly { readonly id: string }[],
  added: SheetAddition[],
): unknown {
  if (!Array.isArray(stored)) return stored;
  return (stored as unknown[]).map((item) => {
    if (!isFields(item)) return item;
    const id = shortText.safeParse(item['id']).data ?? '?';
    return withFields(schema, item, starters.find((one) => one.id === id) ?? {}, `${list}.${id}.`, added);
  });
}

const fieldTitles: Readonly<Record<string, string>> = {
  carryOn: 'what speaks for carrying on after the planned doses',
};

/** Puts in the fields whose absence keeps `stored` from being read; what is optional stays absent. */
function withFields(schema: z.ZodType, stored: Fields, from: object, path: string, added: SheetAddition[]): Fields {
  const read = schema.safeParse(stored);
  if (read.success) return stored;
  const completed: Record<string, unknown> = { ...stored };
  for (const { path: at } of read.error.issues) {
    const [field] = at;
    if (at.length !== 1 || typeof field !== 'string' || stored[field] !== undefined) continue;
    const value = (from as Fields)[field];
    if (value === undefined) continue;
    completed[field] = value;
    added.push({
      path: `${path}${field}`,
      says: `${fieldTitles[field] ?? `${path}${field}`}: ${typeof value === 'object' ? 'as the starter has it' : JSON.stringify(value)}`,
    });
  }
  return completed;
}

/** A sheet to begin a new version from: what an upgrade has added is empty again, with its value as a suggestion. */
export function beginningFrom(sheet: ProtocolSheet): ProtocolSheet {
  const numbers = { ...sheet.numbers };
  for (const key of numberKeyNames) {
    const { value, source, status } = numbers[key];
    if (status === 'added by an upgrade, not signed' && value !== null)
      numbers[key] = { value: null, suggestion: value, source, status: 'from memory' };
  }
  return { ...sheet, numbers, regimens: sheet.regimens.map(withOwnNumbers) };
}

/** A regimen's own number is never empty: it begins as the starter has it, for the two who will sign it. */
function withOwnNumbers(regimen: Regimen): Regimen {
  const numbers = { ...regimen.numbers };
  const starter = given.regimens.find(({ medicine }) => medicine === regimen.medicine);
  for (const key of numberKeyNames) {
    const number = starter?.numbers[key];
    if (number !== undefined && numbers[key]?.status === 'added by an upgrade, not signed') numbers[key] = number;
  }
  return { ...regimen, numbers };
}
