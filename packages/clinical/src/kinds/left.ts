import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField } from './fields.ts';

/** The person has gone home. Closes the visit. */
export const left = entryKind({
  name: 'left',
  of: 'patient',
  shape: 1,
  label: 'left',
  help: 'With whom, and that they hold the card with whom to call.',
  writes: careRoles,
  body: z.object({ cardGiven: z.boolean(), note: textField.optional() }).readonly(),
  example: { cardGiven: true },
});
