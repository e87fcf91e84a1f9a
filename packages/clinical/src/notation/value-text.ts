/**
 * A value of a body as text, and back, by its schema: numbers, yes and no, dates, words from a list, quoted texts, lists in
 * square brackets, groups in braces. Everything any entry kind can hold can be written this way.
 */
import type { z } from 'zod';
import { parseDay, shortDate } from '../calendar/day.ts';
import {
  type Found,
  type LineScanner,
  atEnd,
  isPlainWord,
  quoted,
  take,
  takeDate,
  takeLabel,
  takeOneOf,
  takePlainWord,
  takeQuoted,
  takeWords,
  want,
} from './line-scanner.ts';

/** As much of a schema's own description as is needed here (zod 4: `schema.def`). */
type Described = {
  readonly def: {
    readonly type: string;
    readonly innerType?: Described;
    readonly shape?: Readonly<Record<string, Described>>;
    readonly options?: readonly Described[];
    readonly entries?: Readonly<Record<string, string>>;
    readonly values?: readonly unknown[];
    readonly element?: Described;
    readonly valueType?: Described;
  };
};
export type Schema = Described;

export const schemaOf = (schema: z.ZodType): Schema => schema;

/** Readonly and optional aside. */
function bare(schema: Schema): Schema {
  const { type, innerType } = schema.def;
  return (type === 'readonly' || type === 'optional') && innerType !== undefined ? bare(innerType) : schema;
}

/** The shapes a body may have: one, or one for each answer. */
export function shapesOf(schema: Schema): readonly Readonly<Record<string, Schema>>[] {
  const { def } = bare(schema);
  if (def.type === 'object') return [def.shape ?? {}];
  return def.type === 'union' ? (def.options ?? []).flatMap(shapesOf) : [];
}

const isQuantity = (shape: Readonly<Record<string, Schema>>): boolean =>
  Object.keys(shape).toSorted().join() === 'comparator,unit,value';

/** Bodies that name other entries of the ledger: written as labels. */
const references: Readonly<Record<string, readonly string[]>> = {
  'results-signed': ['results'],
  withdrawal: ['entry'],
  'symptom-cleared': ['entry'],
  'prescriber-decision': ['about'],
  'second-check': ['preparation'],
  'looked-again': ['about'],
};
export const referenceFields = (kind: string): readonly string[] => references[kind] ?? [];

/** "partMilliliters" is written "part milliliters". */
const fieldWords = (field: string): string => field.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

export function valueText(schema: Schema, value: unknown, isReference = false): string {
  const { def } = bare(schema);
  switch (def.type) {
    case 'boolean':
      return value === true ? 'yes' : 'no';
    case 'number':
      return String(value);
    case 'enum':
    case 'literal':
      return String(value);
    case 'custom': {
      const day = parseDay(String(value));
      return day === undefined ? quoted(String(value)) : shortDate(day);
    }
    case 'array': {
      const element = def.element ?? schema;
      const items = (value as readonly unknown[]).map((item) => valueText(element, item, isReference));
      return isReference ? items.join(' ') : `[${items.join(', ')}]`;
    }
    case 'record': {
      const valueType = def.valueType ?? schema;
      return `{${Object.entries(value as object)
        .map(([key, item]) => `${quoted(key)} ${valueText(valueType, item)}`)
        .join(', ')}}`;
    }
    case 'object':
    case 'union': {
      const shapes = shapesOf(schema);
      if (shapes[0] !== undefined && isQuantity(shapes[0])) {
        const { comparator, value: number, unit } = value as { comparator: string; value: string; unit: string };
        return `${comparator}${number} ${unit}`;
      }
      return `{${fieldsText(schema, value)}}`;
    }
    default: {
      const text = String(value);
      if (isReference) return `#${text}`;
      return isPlainWord(text) ? text : quoted(text);
    }
  }
}

/** `site right forearm, gauge 22, tries 1, placed yes` */
export function fieldsText(schema: Schema, value: unknown, kind = ''): string {
  const shape = fittingShape(schema, value);
  return Object.entries(value as object)
    .filter(([, item]) => item !== undefined)
    .map(([field, item]) => {
      const of = shape[field];
      return of === undefined
        ? ''
        : `${fieldWords(field)} ${valueText(of, item, referenceFields(kind).includes(field))}`;
    })
    .join(', ');
}

function fittingShape(schema: Schema, value: unknown): Readonly<Record<string, Schema>> {
  const shapes = shapesOf(schema);
  const fits = shapes.find((shape) =>
    Object.entries(shape).every(
      ([field, of]) =>
        of.def.type !== 'literal' || of.def.values?.includes((value as Record<string, unknown>)[field]) === true,
    ),
  );
  return fits ?? shapes[0] ?? {};
}

export function takeValue(scanner: LineScanner, schema: Schema, isReference = false): Found<unknown> | undefined {
  const { def } = bare(schema);
  switch (def.type) {
    case 'boolean': {
      const word = takeOneOf(scanner, ['yes', 'no']);
      return word === undefined ? undefined : { value: word === 'yes' };
    }
    case 'number': {
      const text = take(scanner, /-?\d+(?:\.\d+)?(?:e[+-]?\d+)?(?![A-Za-z0-9])/y, 'a number');
      return text === undefined ? undefined : { value: Number(text) };
    }
    case 'enum':
    case 'literal': {
      const wordings = def.type === 'enum' ? Object.values(def.entries ?? {}) : (def.values ?? []).map(String);
      const wording = takeOneOf(scanner, wordings);
      return wording === undefined ? undefined : { value: wording };
    }
    case 'custom':
      return takeDate(scanner) ?? takeQuoted(scanner);
    case 'array':
      return isReference ? takeLabels(scanner) : takeList(scanner, def.element ?? schema);
    case 'record':
      return takeRecord(scanner, def.valueType ?? schema);
    case 'object':
    case 'union': {
      const shapes = shapesOf(schema);
      if (shapes[0] !== undefined && isQuantity(shapes[0])) return takeQuantity(scanner, shapes[0]);
      if (take(scanner, /\{/y, 'a group in {braces}') === undefined) return undefined;
      const fields = takeFields(scanner, schema);
      return fields === undefined || take(scanner, /\}/y, '}') === undefined ? undefined : fields;
    }
    default: {
      if (!isReference) return takeQuoted(scanner) ?? takePlainWord(scanner);
      const label = takeLabel(scanner);
      return label === undefined ? undefined : { value: label };
    }
  }
}

function takeLabels(scanner: LineScanner): Found<readonly string[]> | undefined {
  const labels: string[] = [];
  for (let label = takeLabel(scanner); label !== undefined; label = takeLabel(scanner)) labels.push(label);
  return labels.length === 0 ? undefined : { value: labels };
}

function takeList(scanner: LineScanner, element: Schema): Found<readonly unknown[]> | undefined {
  const items: unknown[] = [];
  if (take(scanner, /\[/y, 'a list in [square brackets]') === undefined) return undefined;
  if (take(scanner, /\]/y, ']') !== undefined) return { value: items };
  for (;;) {
    const item = takeValue(scanner, element);
    if (item === undefined) return undefined;
    items.push(item.value);
    if (take(scanner, /\]/y, ']') !== undefined) return { value: items };
    if (take(scanner, /,/y, 'a comma') === undefined) return undefined;
  }
}

function takeRecord(scanner: LineScanner, valueType: Schema): Found<object> | undefined {
  const items: [string, unknown][] = [];
  if (take(scanner, /\{/y, 'a group in {braces}') === undefined) return undefined;
  while (take(scanner, /\}/y, '}') === undefined) {
    if (items.length > 0 && take(scanner, /,/y, 'a comma') === undefined) return undefined;
    const key = takeQuoted(scanner);
    const item = key === undefined ? undefined : takeValue(scanner, valueType);
    if (key === undefined || item === undefined) return undefined;
    items.push([key.value, item.value]);
  }
  // Not an assignment: a key such as "__proto__" must stay a key.
  return { value: Object.fromEntries(items) };
}

function takeQuantity(scanner: LineScanner, shape: Readonly<Record<string, Schema>>): Found<object> | undefined {
  const number = take(
    scanner,
    /(?:<=|>=|<|>)? ?-?\d+(?:\.\d+)?(?![\d.])/y,
    'a number with its unit, such as 88 umol/L',
  );
  if (number === undefined) return undefined;
  const comparator = /^[<>]=?/.exec(number)?.[0] ?? '';
  const unit = shape['unit'] === undefined ? undefined : takeValue(scanner, shape['unit']);
  if (unit === undefined) {
    const units = shape['unit'] === undefined ? [] : Object.values(bare(shape['unit']).def.entries ?? {});
    const which = units.length > 0 && units.length <= 4 ? `: ${units.join(' | ')}` : '';
    // Matches nothing: only says what was wanted behind the number.
    take(scanner, /(?!)/y, `the unit of ${number.trim()} as it was reported, which is never guessed${which}`);
    return undefined;
  }
  return { value: { comparator, value: number.slice(comparator.length).trim(), unit: unit.value } };
}

/** Fields in any order, separated by commas. Where a body has several shapes, the first that takes all the text is meant. */
export function takeFields(
  scanner: LineScanner,
  schema: Schema,
  kind = '',
): Found<Record<string, unknown>> | undefined {
  const start = scanner.at;
  let farthest: { at: number; found: Found<Record<string, unknown>> } | undefined;
  for (const shape of shapesOf(schema)) {
    scanner.at = start;
    const found = takeShape(scanner, shape, kind);
    if (found !== undefined && (farthest === undefined || scanner.at > farthest.at))
      farthest = { at: scanner.at, found };
  }
  scanner.at = farthest?.at ?? start;
  return farthest?.found;
}

function takeShape(
  scanner: LineScanner,
  shape: Readonly<Record<string, Schema>>,
  kind: string,
): Found<Record<string, unknown>> | undefined {
  const names = Object.keys(shape).toSorted((a, b) => b.length - a.length);
  const body: Record<string, unknown> = {};
  for (;;) {
    const before = scanner.at;
    if (Object.keys(body).length > 0 && (atEnd(scanner) || take(scanner, /,/y, 'a comma and more') === undefined))
      return { value: body };
    const field = names.find((name) => !Object.hasOwn(body, name) && takeWords(scanner, fieldWords(name)));
    const of = field === undefined ? undefined : shape[field];
    if (field === undefined || of === undefined) {
      scanner.at = before;
      return Object.keys(body).length > 0 ? want(scanner, 'another field') : { value: body };
    }
    const value = takeValue(scanner, of, referenceFields(kind).includes(field));
    if (value === undefined) return undefined;
    body[field] = value.value;
  }
}
