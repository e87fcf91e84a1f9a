import { z } from 'zod';
import { clinicalRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField } from './fields.ts';

/** An operation. A repair of the hip starts the wait before a first dose; any operation spoils nearby blood samples. */
export const surgery = entryKind({
  name: 'surgery',
  of: 'patient',
  shape: 1,
  label: 'operation',
  help: 'What was done; the date is the day of the operation.',
  writes: clinicalRoles,
  body: z
    .object({ what: z.enum(['hip repair', 'hip re-operation', 'other operation']), note: textField.optional() })
    .readonly(),
  example: { what: 'hip repair' },
});
