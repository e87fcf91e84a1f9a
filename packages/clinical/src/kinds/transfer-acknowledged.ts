import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText } from './fields.ts';

/** The other service says they have them. */
export const transferAcknowledged = entryKind({
  name: 'transfer-acknowledged',
  of: 'patient',
  shape: 1,
  label: 'transfer acknowledged',
  help: 'Who said so.',
  writes: careRoles,
  body: z.object({ by: shortText }).readonly(),
  example: { by: 'their booking office, by letter' },
});
