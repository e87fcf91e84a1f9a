import { z } from 'zod';
import { clinicalRoles } from '../ledger/role.ts';
import { weightQuantity } from '../exact/quantity.ts';
import { entryKind } from './entry-kind.ts';
import { shortText } from './fields.ts';

/** Body weight. `effectiveAt` is the day it was measured. */
export const weight = entryKind({
  name: 'weight',
  of: 'patient',
  shape: 1,
  label: 'body weight',
  help: 'Shoes off. If it was not measured here, say so.',
  writes: clinicalRoles,
  body: z
    .object({
      quantity: weightQuantity,
      method: z.enum(['measured', 'reported', 'estimated']),
      /** Why the number may mislead: amputation, plaster, oedema, ascites. */
      caution: shortText.optional(),
    })
    .readonly(),
  example: { quantity: { comparator: '', value: '56.2', unit: 'kg' }, method: 'measured' },
});
