import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, textField, uuidField } from './fields.ts';
import { messageChannels } from './message-begun.ts';

/**
 * A person saw the reminders planned for a place, with the number or address and the days, and lets them go by themselves; or
 * takes that back. The newest word counts.
 */
export const remindersPlan = entryKind({
  name: 'reminders-plan',
  of: 'patient',
  shape: 1,
  label: 'reminders by themselves',
  help: 'The planned reminders of a place may go without a press each, or may not any more.',
  writes: careRoles,
  body: z.discriminatedUnion('is', [
    z
      .object({
        is: z.literal('approved'),
        /** The entry that booked the place. */
        place: uuidField,
        channel: z.enum(messageChannels),
        to: shortText,
        /** Which of the unit's reminders: days before the place. */
        daysBefore: z.array(z.number().int().min(1).max(90)).min(1).readonly(),
      })
      .readonly(),
    z.object({ is: z.literal('stopped'), reason: textField }).readonly(),
  ]),
  example: { is: 'approved', place: 'e12', channel: 'text message', to: '07700 900123', daysBefore: [7, 2] },
});
