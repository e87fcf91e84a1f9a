import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField, uuidField } from './fields.ts';

export const waysToSend = ['post', 'handed over', 'e-mail', 'another way'] as const;

/** A signed letter left the unit. */
export const letterSent = entryKind({
  name: 'letter-sent',
  of: 'patient',
  shape: 1,
  label: 'letter sent',
  help: 'Which letter, by what way.',
  writes: careRoles,
  body: z.object({ letter: uuidField, by: z.enum(waysToSend), note: textField.optional() }).readonly(),
  example: { letter: 'e12', by: 'post' },
});
