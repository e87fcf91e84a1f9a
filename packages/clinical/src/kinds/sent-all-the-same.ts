import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, textField } from './fields.ts';

/** Written at a device without network, in conflict with what others wrote meanwhile, and sent all the same: why. */
export const sentAllTheSame = entryKind({
  name: 'sent-all-the-same',
  of: 'patient',
  shape: 1,
  label: 'sent all the same',
  help: 'What was written without a network, what stood against it, and why it stands.',
  writes: careRoles,
  body: z.object({ what: textField, wroteAt: shortText, against: textField, because: textField }).readonly(),
  example: {
    what: 'observations before: pulse 72/min',
    wroteAt: '2027-01-28T10:42:00.000Z',
    against: 'Somebody wrote in these notes meanwhile.',
    because: 'Imre took them before, these are the second ones',
  },
});
