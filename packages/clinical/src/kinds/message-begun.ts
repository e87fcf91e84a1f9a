import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, textField, uuidField } from './fields.ts';

export const messageChannels = ['text message', 'e-mail'] as const;
export type MessageChannel = (typeof messageChannels)[number];

/** A reminder is handed to a channel: written before it is sent, so that nothing is ever sent twice. */
export const messageBegun = entryKind({
  name: 'message-begun',
  of: 'patient',
  shape: 1,
  label: 'reminder handed over',
  help: 'By what channel, to which number or address, about which place.',
  writes: careRoles,
  body: z
    .object({
      channel: z.enum(messageChannels),
      to: shortText,
      /** The entry that booked the place. */
      place: uuidField,
      /** Which of the unit's reminders it is: days before the place. */
      daysBefore: z.number().int().min(1).max(90),
      text: textField,
      /** The approval by which it went by itself; absent where a person pressed. */
      approval: uuidField.optional(),
    })
    .readonly(),
  example: {
    channel: 'text message',
    to: '07700 900123',
    place: 'e12',
    daysBefore: 7,
    text: 'Thornbeck Day Unit: you have a place on Thursday 3 December 2026 at 09:00.',
  },
});
