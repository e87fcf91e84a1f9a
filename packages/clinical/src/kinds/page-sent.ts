import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, uuidField } from './fields.ts';
import { messageChannels } from './message-begun.ts';

/** The address of somebody's own page is handed to a channel. The address itself is not written: whoever reads these notes cannot open it. */
export const pageSent = entryKind({
  name: 'page-sent',
  of: 'patient',
  shape: 1,
  label: 'address of the own page handed over',
  help: 'By what channel, to which number or address.',
  writes: careRoles,
  body: z.object({ page: uuidField, channel: z.enum(messageChannels), to: shortText }).readonly(),
  example: { page: 'e14', channel: 'e-mail', to: 'w@mail.example' },
});
