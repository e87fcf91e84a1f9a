import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText } from './fields.ts';

/** The person has died. Every message stops. */
export const died = entryKind({
  name: 'died',
  of: 'patient',
  shape: 1,
  label: 'died',
  help: 'How we know. Everything that would be sent is stopped.',
  writes: careRoles,
  body: z.object({ source: shortText }).readonly(),
  example: { source: 'family doctor' },
});
