import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, textField } from './fields.ts';

/** How far a medicine taken at home is really taken: bone tablets, calcium, vitamin D. `effectiveAt` is the day it was told. */
export const adherence = entryKind({
  name: 'adherence',
  of: 'patient',
  shape: 1,
  label: 'taken as prescribed?',
  help: 'How much of it is really taken, and how you know. Infusions are counted from the notes.',
  writes: careRoles,
  body: z
    .object({
      medicine: shortText,
      taken: z.enum(['nearly all', 'more than half', 'less than half', 'none', 'not known']),
      source: z.enum(['told by the person', 'told by a carer', 'dispensing record']),
      note: textField.optional(),
    })
    .readonly(),
  example: { medicine: 'calcium and vitamin D', taken: 'nearly all', source: 'told by the person' },
});
