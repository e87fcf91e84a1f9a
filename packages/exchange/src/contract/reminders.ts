/** Reminders of booked places: which are due, which are planned and may go by themselves, and one of them sent. */
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
  /** It goes by itself in the unit's hours, as approved; no press is needed. */
  byItself: z.boolean(),
});
export type ReminderRow = z.infer<typeof reminderRow>;

/** The reminders of a place still to come. */
export const remindersPlanRow = reminderRow.omit({ daysBefore: true, notNow: true, byItself: true }).extend({
  days: z.array(z.object({ daysBefore: z.number().int(), on: date })),
  /** Why they cannot be approved, or why approved ones wait for a person. */
  because: z.string().optional(),
  approved: z.object({ by: z.string(), on: date }).optional(),
});
export type RemindersPlanRow = z.infer<typeof remindersPlanRow>;

export const remindersView = z.object({
  unit: z.string(),
  today: date,
  rows: z.array(reminderRow),
  /** Reports about messages that could not be read, or speak of none of ours: they wait in their folder. */
  returnedNotTaken: z.number().int(),
  /** Absent where the unit lets none go by itself. */
  plans: z.array(remindersPlanRow).optional(),
});
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
