import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText } from './fields.ts';

/** A letter went out, with the text that was signed. */
export const letter = entryKind({
  name: 'letter',
  of: 'patient',
  shape: 1,
  label: 'letter',
  help: 'To whom, about what.',
  writes: registrants,
  body: z
    .object({
      to: z.enum(['family doctor', 'patient']),
      about: z.enum(['dose given', 'put off', 'review', 'transfer']),
      version: shortText,
      text: z.string().min(1).max(20000),
    })
    .readonly(),
  example: { to: 'family doctor', about: 'dose given', version: '1', text: 'Dear Dr Penrose ...' },
});
