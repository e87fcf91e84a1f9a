import { z } from 'zod';
import { clinicalRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField } from './fields.ts';

/** Something long-standing that bears on minerals and bone. It holds until a prescriber has looked into it, not until a date. */
export const condition = entryKind({
  name: 'condition',
  of: 'patient',
  shape: 1,
  label: 'condition that bears on minerals',
  help: 'What is known: it is corrected first, or a prescriber records having looked into it.',
  writes: clinicalRoles,
  body: z
    .object({
      what: z.enum(['malabsorption', 'bariatric surgery', 'parathyroid or thyroid surgery', 'bone pain']),
      note: textField.optional(),
    })
    .readonly(),
  example: { what: 'malabsorption', note: 'coeliac disease, on its diet' },
});
