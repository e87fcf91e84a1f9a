/**
 * What of a kind is filled in by hand: an order under a group direction is recorded where its
 * conditions are asked, not here; what the rules write nobody fills in.
 */
import type { KindName } from '@twelvemonth/clinical';
import type { Shape } from './shape.ts';

const leftOut: Partial<Record<KindName, { readonly fields: readonly string[]; readonly choices: readonly string[] }>> =
  {
    dose: { fields: ['homeRule'], choices: [] },
    prescription: { fields: ['groupDirection', 'underDirection'], choices: ['group direction'] },
  };

export function byHand(kind: KindName, shape: Shape): Shape {
  const out = leftOut[kind];
  if (out === undefined || shape.is !== 'group') return shape;
  const fields = shape.fields
    .filter(({ key }) => !out.fields.includes(key))
    .map((field) =>
      field.shape.is === 'choice'
        ? {
            ...field,
            shape: { ...field.shape, values: field.shape.values.filter((one) => !out.choices.includes(one)) },
          }
        : field,
    );
  return { ...shape, fields };
}
