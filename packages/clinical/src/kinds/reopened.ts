import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField } from './fields.ts';

/** Care begins again after a break, a no, a loss of contact or a closing. */
export const reopened = entryKind({
  name: 'reopened',
  of: 'patient',
  shape: 1,
  label: 'reopened',
  help: 'Why care begins again.',
  writes: registrants,
  body: z.object({ reason: textField }).readonly(),
  example: { reason: 'rang us, wants the next dose' },
});
