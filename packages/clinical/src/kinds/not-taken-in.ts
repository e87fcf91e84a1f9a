import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, textField } from './fields.ts';

/** Written at a device without network and let go when it came back: what it said and why it is not in the notes. */
export const notTakenIn = entryKind({
  name: 'not-taken-in',
  of: 'patient',
  shape: 1,
  label: 'not taken in',
  help: 'What was written without a network, and why it does not stand.',
  writes: careRoles,
  body: z.object({ what: textField, wroteAt: shortText, because: textField }).readonly(),
  example: {
    what: 'observations before: pulse 72/min',
    wroteAt: '2027-01-28T10:42:00.000Z',
    because: 'Imre had written the same at the other tablet',
  },
});
