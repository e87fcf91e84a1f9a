/**
 * A friendly form of an entry kind: a head, then clauses after commas in any order. `weight {quantity} {method}` says both
 * how it is printed and how it is read; `{field}` stands for the field's value as value-text.ts writes it, and `(s)` for
 * a plural after a number.
 */
import type { KindName } from '../kinds/index.ts';
import { type LineScanner, take, takeOneOf, takeWords, want } from './line-scanner.ts';
import { type Schema, referenceFields, shapesOf, takeValue, valueText } from './value-text.ts';

export type Form = {
  readonly kind: KindName;
  readonly head: string;
  /** Fields this form always sets; it prints only bodies that have exactly them. */
  readonly fixed?: Readonly<Record<string, unknown>>;
  /** Words or fields after a comma. A clause of words alone says what it sets. */
  readonly clauses?: readonly (string | { readonly words: string; readonly sets: Readonly<Record<string, unknown>> })[];
  /** What is meant where nothing is said. */
  readonly unsaid?: Readonly<Record<string, unknown>>;
};

type Body = Readonly<Record<string, unknown>>;

/** Splits a template into words, fields and plurals. */
const piecesOf = (template: string): readonly string[] =>
  template.split(/(\{[a-zA-Z.]+\}|\(s\))/).filter((piece) => piece !== '');
const fieldOf = (piece: string): string | undefined => (piece.startsWith('{') ? piece.slice(1, -1) : undefined);
const fieldsOf = (template: string): readonly string[] => piecesOf(template).flatMap((piece) => fieldOf(piece) ?? []);

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

function at(body: Body, path: string): unknown {
  return path.split('.').reduce<unknown>((value, key) => (value as Body | undefined)?.[key], body);
}

function schemaAt(shape: Readonly<Record<string, Schema>>, path: string): Schema | undefined {
  const [first = '', ...rest] = path.split('.');
  const of = shape[first];
  return of === undefined || rest.length === 0 ? of : schemaAt(shapesOf(of)[0] ?? {}, rest.join('.'));
}

/** The shape of the body this form is about: the one that allows its fixed fields and has its fields. */
function shapeOf(form: Form, schema: Schema): Readonly<Record<string, Schema>> {
  const fits = shapesOf(schema).find((shape) =>
    Object.entries(form.fixed ?? {}).every(
      ([field, value]) => shape[field]?.def.values?.includes(value) ?? shape[field] !== undefined,
    ),
  );
  return fits ?? {};
}

function templateText(
  form: Form,
  shape: Readonly<Record<string, Schema>>,
  body: Body,
  template: string,
): string | undefined {
  let text = '';
  let number: unknown;
  for (const piece of piecesOf(template)) {
    const field = fieldOf(piece);
    if (field !== undefined) {
      const of = schemaAt(shape, field);
      const value = at(body, field);
      if (of === undefined || value === undefined) return undefined;
      text += valueText(of, value, referenceFields(form.kind).includes(field));
      number = value;
    } else {
      text += piece === '(s)' ? (number === 1 ? '' : 's') : piece;
    }
  }
  return text;
}

/** The body in this form's words; undefined if the form cannot say all of it. */
export function formText(form: Form, schema: Schema, body: Body): string | undefined {
  const shape = shapeOf(form, schema);
  for (const [field, value] of Object.entries(form.fixed ?? {})) if (!same(body[field], value)) return undefined;
  const said = new Set([
    ...Object.keys(form.fixed ?? {}),
    ...fieldsOf(form.head).map((path) => path.split('.')[0] ?? ''),
  ]);
  const head = templateText(form, shape, body, form.head);
  if (head === undefined) return undefined;
  const clauses: string[] = [];
  for (const clause of form.clauses ?? []) {
    const fields =
      typeof clause === 'string' ? fieldsOf(clause).map((path) => path.split('.')[0] ?? '') : Object.keys(clause.sets);
    if (fields.some((field) => said.has(field)) || fields.every((field) => same(body[field], form.unsaid?.[field])))
      continue;
    const text =
      typeof clause === 'string'
        ? templateText(form, shape, body, clause)
        : Object.entries(clause.sets).every(([field, value]) => same(body[field], value))
          ? clause.words
          : undefined;
    if (text === undefined) continue;
    clauses.push(text);
    for (const field of fields) said.add(field);
  }
  for (const [field, value] of Object.entries(form.unsaid ?? {})) if (same(body[field], value)) said.add(field);
  if (Object.keys(body).some((field) => body[field] !== undefined && !said.has(field))) return undefined;
  if (Object.keys(form.unsaid ?? {}).some((field) => body[field] === undefined)) return undefined;
  return [head, ...clauses].join(', ');
}

function put(body: Record<string, unknown>, path: string, value: unknown): void {
  const [first = '', ...rest] = path.split('.');
  if (rest.length === 0) body[first] = value;
  else put((body[first] ??= {}) as Record<string, unknown>, rest.join('.'), value);
}

function takeTemplate(
  scanner: LineScanner,
  form: Form,
  shape: Readonly<Record<string, Schema>>,
  template: string,
  body: Record<string, unknown>,
): boolean {
  const start = scanner.at;
  const into: [string, unknown][] = [];
  for (const piece of piecesOf(template)) {
    const field = fieldOf(piece);
    if (field !== undefined) {
      const of = schemaAt(shape, field);
      const found = of === undefined ? undefined : takeValue(scanner, of, referenceFields(form.kind).includes(field));
      if (found === undefined) {
        scanner.at = start;
        return false;
      }
      into.push([field, found.value]);
    } else if (piece === '(s)') {
      take(scanner, /s(?![A-Za-z])/y, 's');
    } else if (piece.trim() !== '' && !takeLiteral(scanner, piece)) {
      scanner.at = start;
      return false;
    }
  }
  for (const [field, value] of into) put(body, field, value);
  return true;
}

/** Words between fields. Commas and stops stand alone; a word before a plural does not end a word. */
function takeLiteral(scanner: LineScanner, piece: string): boolean {
  const words = piece.trim();
  if (words === 'dose') return take(scanner, /dose/y, 'dose') !== undefined;
  return takeWords(scanner, words);
}

/** Reads this form here; undefined if the head does not fit. Clauses that do not fit are left for the reader to name. */
export function takeForm(scanner: LineScanner, form: Form, schema: Schema): Record<string, unknown> | undefined {
  const shape = shapeOf(form, schema);
  const body: Record<string, unknown> = { ...form.fixed };
  if (!takeTemplate(scanner, form, shape, form.head, body)) return undefined;
  const left = new Set(form.clauses ?? []);
  for (;;) {
    const before = scanner.at;
    if (left.size === 0 || take(scanner, /,/y, 'a comma and more') === undefined) break;
    const clause = [...left].find((candidate) => takeClause(scanner, form, shape, candidate, body));
    if (clause === undefined) {
      want(scanner, 'something else after the comma');
      scanner.at = before;
      break;
    }
    left.delete(clause);
  }
  for (const [field, value] of Object.entries(form.unsaid ?? {})) body[field] ??= value;
  return body;
}

function takeClause(
  scanner: LineScanner,
  form: Form,
  shape: Readonly<Record<string, Schema>>,
  clause: NonNullable<Form['clauses']>[number],
  body: Record<string, unknown>,
): boolean {
  if (typeof clause === 'string') return takeTemplate(scanner, form, shape, clause, body);
  if (takeOneOf(scanner, [clause.words]) === undefined) return false;
  Object.assign(body, clause.sets);
  return true;
}
