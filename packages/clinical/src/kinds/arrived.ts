import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { identifiersField, uuidField } from './fields.ts';

/** The person is here, and two identifiers were asked and matched. Opens the visit. */
export const arrived = entryKind({
  name: 'arrived',
  of: 'patient',
  shape: 1,
  label: 'arrived',
  help: 'Ask two identifiers; say which.',
  writes: careRoles,
  body: z
    .object({
      session: uuidField,
      identifiers: identifiersField,
      chair: z.number().int().min(1).max(60).optional(),
    })
    .readonly(),
  example: { session: 'thornbeck-2027-01-28', identifiers: ['full name', 'birth date'] },
});
