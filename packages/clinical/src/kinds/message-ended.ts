import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField, uuidField } from './fields.ts';

/** What the channel said of a reminder or of a page's address, or what came back later. */
export const messageEnded = entryKind({
  name: 'message-ended',
  of: 'patient',
  shape: 1,
  label: 'what became of a message',
  help: 'Taken by the channel, not taken with the reason, or came back.',
  writes: careRoles,
  body: z.discriminatedUnion('outcome', [
    z.object({ outcome: z.literal('accepted'), message: uuidField }).readonly(),
    z.object({ outcome: z.literal('not accepted'), message: uuidField, because: textField }).readonly(),
    z.object({ outcome: z.literal('came back'), message: uuidField, because: textField }).readonly(),
  ]),
  example: { outcome: 'came back', message: 'e13', because: 'no such mailbox' },
});
