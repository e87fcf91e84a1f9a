/** What has been entered so far, by the path of each field, and the body it makes. What is left empty is left out. */
import { type TypedQuantity, nothingTyped } from '../fields/typed-quantity.ts';
import type { Shape, ShapeField } from './shape.ts';

export type FieldValue = string | number | boolean | readonly string[] | TypedQuantity | undefined;
export type FormValues = Readonly<Record<string, FieldValue>>;

const under = (path: string, key: string): string => (path === '' ? key : `${path}.${key}`);
const lines = (text: string): readonly string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');

const isEmpty = (value: unknown): boolean =>
  value === undefined ||
  value === '' ||
  (Array.isArray(value) && value.length === 0) ||
  (typeof value === 'object' && value !== null && Object.keys(value).length === 0);

function objectFrom(fields: readonly ShapeField[], values: FormValues, path: string): Record<string, unknown> {
  return Object.fromEntries(
    fields
      .map(({ key, shape }) => [key, bodyFrom(shape, values, under(path, key))] as const)
      .filter(([, value]) => !isEmpty(value)),
  );
}

/** The body as it will be sent. The server says what is missing, by name. */
export function bodyFrom(shape: Shape, values: FormValues, path = ''): unknown {
  const value = values[path];
  switch (shape.is) {
    case 'group':
      return objectFrom(shape.fields, values, path);
    case 'kinds of answer': {
      const chosen = values[under(path, shape.on)];
      const variant = shape.variants.find((each) => each.value === chosen);
      return {
        ...(chosen === undefined ? {} : { [shape.on]: chosen }),
        ...objectFrom(variant?.fields ?? [], values, path),
      };
    }
    case 'quantity': {
      const typed = (value ?? nothingTyped) as TypedQuantity;
      return typed.value.trim() === ''
        ? undefined
        : {
            comparator: typed.comparator,
            value: typed.value.trim(),
            ...(typed.unit === undefined ? {} : { unit: typed.unit }),
          };
    }
    case 'several texts':
      return typeof value === 'string' ? lines(value) : value;
    case 'text':
    case 'long text':
      return typeof value === 'string' ? value.trim() : value;
    case 'choice':
    case 'ticks':
    case 'yes or no':
    case 'number':
    case 'date':
      return value;
  }
}

/** The values with which the form of an existing body opens (a correction). */
export function valuesFrom(shape: Shape, body: unknown, path = ''): FormValues {
  if (body === undefined || body === null) return {};
  const at = (key: string): unknown => (body as Readonly<Record<string, unknown>>)[key];
  const inside = (fields: readonly ShapeField[]): FormValues =>
    Object.assign(
      {},
      ...fields.map(({ key, shape: inner }) => valuesFrom(inner, at(key), under(path, key))),
    ) as FormValues;
  switch (shape.is) {
    case 'group':
      return inside(shape.fields);
    case 'kinds of answer': {
      const chosen = at(shape.on) as string;
      return {
        [under(path, shape.on)]: chosen,
        ...inside(shape.variants.find((each) => each.value === chosen)?.fields ?? []),
      };
    }
    case 'several texts':
      return { [path]: Array.isArray(body) ? body.join('\n') : '' };
    case 'choice':
    case 'ticks':
    case 'quantity':
    case 'yes or no':
    case 'number':
    case 'date':
    case 'text':
    case 'long text':
      return { [path]: body as FieldValue };
  }
}
