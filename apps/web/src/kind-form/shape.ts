/**
 * What a form for an entry kind looks like, read off the kind's own schema: the schema that checks what is sent is the one
 * that lays out what is asked.
 */
import type { z } from 'zod';

export type Shape =
  | { readonly is: 'group'; readonly fields: readonly ShapeField[] }
  | {
      readonly is: 'kinds of answer';
      readonly on: string;
      readonly variants: readonly { readonly value: string; readonly fields: readonly ShapeField[] }[];
    }
  | { readonly is: 'choice'; readonly values: readonly string[] }
  | { readonly is: 'ticks'; readonly values: readonly string[] }
  | { readonly is: 'quantity'; readonly units: readonly string[] }
  | { readonly is: 'yes or no' | 'number' | 'date' | 'text' | 'long text' | 'several texts' };
export type ShapeField = { readonly key: string; readonly shape: Shape; readonly optional: boolean };

type Def = {
  readonly type: string;
  readonly innerType?: z.ZodType;
  readonly shape?: Readonly<Record<string, z.ZodType>>;
  readonly options?: readonly z.ZodType[];
  readonly discriminator?: string;
  readonly entries?: Readonly<Record<string, string>>;
  readonly values?: readonly unknown[];
  readonly element?: z.ZodType;
};
const defOf = (schema: z.ZodType): Def => schema.def;

/** Longest text that still is one line on a form. */
const shortTextLength = 200;

function unwrapped(schema: z.ZodType): { readonly inner: z.ZodType; readonly optional: boolean } {
  const def = defOf(schema);
  if (def.innerType === undefined) return { inner: schema, optional: false };
  const { inner, optional } = unwrapped(def.innerType);
  return { inner, optional: optional || def.type === 'optional' };
}

const fieldsOf = (shape: Readonly<Record<string, z.ZodType>>): readonly ShapeField[] =>
  Object.entries(shape).flatMap(([key, schema]) => {
    const { inner, optional } = unwrapped(schema);
    const found = shapeOf(inner);
    return found === undefined ? [] : [{ key, shape: found, optional }];
  });

const isQuantity = (shape: Readonly<Record<string, z.ZodType>>): boolean =>
  Object.keys(shape).join() === 'comparator,value,unit';

const enumValues = (schema: z.ZodType | undefined): readonly string[] =>
  schema === undefined ? [] : Object.values(defOf(schema).entries ?? {});

/** Undefined for what no person fills in by hand: clocks, maps. */
export function shapeOf(schema: z.ZodType): Shape | undefined {
  const { inner } = unwrapped(schema);
  const def = defOf(inner);
  switch (def.type) {
    case 'object': {
      const shape = def.shape ?? {};
      return isQuantity(shape)
        ? { is: 'quantity', units: enumValues(shape['unit']) }
        : { is: 'group', fields: fieldsOf(shape) };
    }
    case 'union': {
      const on = def.discriminator ?? '';
      const variants = (def.options ?? []).map((option) => {
        const shape = defOf(unwrapped(option).inner).shape ?? {};
        const literal = defOf(shape[on] as z.ZodType).values?.[0];
        const value = typeof literal === 'string' ? literal : '';
        return { value, fields: fieldsOf(shape).filter(({ key }) => key !== on) };
      });
      return { is: 'kinds of answer', on, variants };
    }
    case 'enum':
      return { is: 'choice', values: enumValues(inner) };
    case 'boolean':
      return { is: 'yes or no' };
    case 'number':
      return { is: 'number' };
    case 'custom':
      return { is: 'date' };
    case 'string':
      return { is: ((inner as z.ZodString).maxLength ?? 0) > shortTextLength ? 'long text' : 'text' };
    case 'array': {
      const element = unwrapped(def.element as z.ZodType).inner;
      const values = enumValues(element);
      return values.length > 0 ? { is: 'ticks', values } : { is: 'several texts' };
    }
    default:
      return undefined;
  }
}
