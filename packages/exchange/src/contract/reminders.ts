/** Reminders of booked places: which are due, and one of them sent. */
import { messageChannels } from '@twelvemonth/clinical';
import { z } from 'zod';
import { date } from './basics.ts';

export const reminderRow = z.object({
  patient: z.string(),
  name: z.string(),
  number: z.string(),
  /** The entry that booked the place. */
  place: z.string(),
  on: date,
  arriveAt: z.string(),
  daysBefore: z.number().int(),
  channel: z.enum(messageChannels).optional(),
  to: z.string().optional(),
  text: z.string(),
  /** Why it cannot be sent now. */
  notNow: z.string().optional(),
});
export type ReminderRow = z.infer<typeof reminderRow>;

export const remindersView = z.object({ unit: z.string(), rows: z.array(reminderRow) });
export type RemindersView = z.infer<typeof remindersView>;

export const sendReminderBody = z.object({
  patient: z.string(),
  place: z.string(),
  daysBefore: z.number().int(),
  role: z.string().optional(),
});
export const sendReminderAnswer = z.object({
  outcome: z.enum(['accepted', 'not accepted', 'not known']),
  because: z.string().optional(),
});
