import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, textField } from './fields.ts';

/** Consent to this course, or that there is none. Asked again on each day of a dose. */
export const consent = entryKind({
  name: 'consent',
  of: 'patient',
  shape: 1,
  label: 'consent',
  help: 'What was decided, by whom, and on what basis if the person lacks capacity.',
  writes: registrants,
  body: z.discriminatedUnion('decision', [
    z.object({ decision: z.literal('given'), how: z.enum(['in writing', 'spoken']) }).readonly(),
    z.object({ decision: z.literal('best interest'), basis: textField, consulted: shortText }).readonly(),
    z.object({ decision: z.literal('not given'), reason: textField.optional() }).readonly(),
  ]),
  example: { decision: 'given', how: 'spoken' },
});
