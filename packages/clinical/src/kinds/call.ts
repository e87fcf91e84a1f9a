import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, textField } from './fields.ts';

/** An attempt to reach the person, whoever rang whom. */
export const call = entryKind({
  name: 'call',
  of: 'patient',
  shape: 1,
  label: 'call or letter',
  help: 'By what route, about what, whether they were reached, when to try again.',
  writes: careRoles,
  body: z
    .object({
      route: z.enum(['telephone', 'letter', 'message', 'family doctor', 'they rang us']),
      about: z.enum(['recall', 'bloods', 'vitamin D', 'place', 'aftercare', 'review', 'advice', 'other']),
      reached: z.boolean(),
      note: textField.optional(),
      callBackOn: dateField.optional(),
    })
    .readonly(),
  example: { route: 'telephone', about: 'recall', reached: true, note: 'wants to come, bloods at the surgery' },
});
