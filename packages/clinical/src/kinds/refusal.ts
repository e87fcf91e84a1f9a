import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, textField } from './fields.ts';

/** The person says no: to this dose, to this medicine, or to all contact. Three different things. */
export const refusal = entryKind({
  name: 'refusal',
  of: 'patient',
  shape: 1,
  label: 'said no',
  help: 'To what, in their words, and when we may ask again.',
  writes: careRoles,
  body: z
    .object({
      to: z.enum(['this dose', 'this medicine', 'all contact']),
      words: textField,
      askAgainOn: dateField.optional(),
    })
    .readonly(),
  example: { to: 'this dose', words: "not before my granddaughter's wedding", askAgainOn: '2027-05-01' as PlainDate },
});
