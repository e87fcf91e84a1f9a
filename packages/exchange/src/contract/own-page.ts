/** A person's own page: whether one is open, what they told us on it or on paper, and a new one handed over. */
import { aheadQuestions, messageChannels } from '@twelvemonth/clinical';
import { z } from 'zod';
import { date } from './basics.ts';
import { sendReminderAnswer } from './reminders.ts';

export const ownPageView = z.object({
  patient: z.string(),
  seq: z.number().int(),
  name: z.string(),
  born: z.string(),
  number: z.string(),
  today: date,
  /** The page that opens now. */
  open: z.object({ entry: z.string(), since: date, until: date }).optional(),
  /** Proposed for a new one: the day of the visit. */
  until: date.optional(),
  /** How a new address could be sent, and why it cannot now. */
  way: z.object({ channel: z.enum(messageChannels), to: z.string() }).optional(),
  notSent: z.string().optional(),
  /** Why none can be handed over. */
  notHere: z.string().optional(),
  /** The questions as the person reads them. */
  questions: z.array(z.object({ id: z.enum(aheadQuestions), asks: z.string(), looksOn: z.enum(['yes', 'no']) })),
  /** Newest first. */
  told: z.array(
    z.object({ entry: z.string(), on: date, words: z.string(), waits: z.boolean(), finding: z.string().optional() }),
  ),
});
export type OwnPageView = z.infer<typeof ownPageView>;

export const handOverPageBody = z.object({
  patient: z.string(),
  expiresOn: date,
  /** Sent as well, by the way they agreed to. */
  send: z.boolean().optional(),
  role: z.string().optional(),
});
/** Said once: the notes keep only what tells whether it is the right one. */
export const handOverPageAnswer = z.object({
  address: z.string(),
  until: date,
  /** As it is printed and sent. */
  title: z.string(),
  text: z.string(),
  /** What became of sending it. */
  sent: sendReminderAnswer.extend({ channel: z.enum(messageChannels), to: z.string() }).optional(),
});
export type HandedOverPage = z.infer<typeof handOverPageAnswer>;
