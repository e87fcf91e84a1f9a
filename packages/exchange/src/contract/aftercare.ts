/** Aftercare: who is to be asked how they are after a first dose, what may not wait, and the form to ask with. */
import { z } from 'zod';
import { date } from './basics.ts';

/** Who, and how they are reached. */
const who = z.object({
  patient: z.string(),
  name: z.string(),
  number: z.string(),
  telephone: z.string().optional(),
  /** Whom we speak to in their place, and whether they agreed. */
  speakTo: z.array(z.string()),
});

export const aftercareRow = who.extend({
  dose: z.object({ entry: z.string(), on: date, medicine: z.string() }),
  /** Asked on a day from `from` to `by`. */
  from: date,
  by: date,
  tryOn: date,
  when: z.enum(['overdue', 'today', 'to come']),
  /** Which of the contacts this is: 1, or 2 where the first came too early to be the last. */
  contact: z.number().int(),
  /** Calls in vain since the dose. */
  attempts: z.number().int(),
  lastAttempt: z.string().optional(),
  /** What was not asked in a call that broke off. */
  notAsked: z.string().optional(),
  noCall: z.string().optional(),
});
export type AftercareRow = z.infer<typeof aftercareRow>;

export const redFlagView = z.object({
  name: z.string(),
  urgency: z.enum(['now', 'today', 'this week']),
  who: z.string(),
  doNow: z.string(),
  thinkOf: z.string(),
  source: z.string(),
});
export type RedFlagView = z.infer<typeof redFlagView>;

/** What was told and is not passed on. */
export const toldRow = who.extend({ entry: z.string(), on: date, flags: z.array(redFlagView), text: z.string() });

/** A reaction that a scheme may want to know of. */
export const reportRow = who.extend({
  reaction: z.string(),
  on: date,
  text: z.string(),
  reported: z.array(z.string()),
});

export const adviceLineView = z
  .object({ weekdays: z.array(z.number().int()), fromTime: z.string(), untilTime: z.string(), openToday: z.boolean() })
  .optional();

export const aftercareView = z.object({
  unit: z.string(),
  today: date,
  adviceLine: adviceLineView,
  people: z.array(aftercareRow),
  redFlags: z.array(toldRow),
  reports: z.array(reportRow),
  /** Asked within the last days, the newest first. */
  asked: z.array(who.extend({ entry: z.string(), on: date, text: z.string(), by: z.string() })),
});
export type AftercareView = z.infer<typeof aftercareView>;

export const aftercareOfPersonView = who.extend({
  seq: z.number().int(),
  born: z.string(),
  unit: z.object({ name: z.string(), telephone: z.string(), emergencyNumber: z.string().optional() }),
  today: date,
  adviceLine: adviceLineView,
  /** The dose that is asked about; undefined: nothing was given here. */
  dose: z.object({ entry: z.string(), on: date, medicine: z.string(), number: z.number().int() }).optional(),
  waiting: aftercareRow.optional(),
  /** The protocol's; undefined: none is in force, and any fever is looked at. */
  limits: z.object({ feverTooHighCelsius: z.number(), feverTooLongDays: z.number() }).optional(),
  /** Red flags not passed on. */
  redFlags: z.array(toldRow),
  told: z.array(z.object({ entry: z.string(), on: date, text: z.string(), by: z.string() })),
  reports: z.array(reportRow),
  /** Where nobody may ring: they said no to all contact, or have died. */
  noCall: z.string().optional(),
  cautions: z.array(z.string()),
});
export type AftercareOfPersonView = z.infer<typeof aftercareOfPersonView>;

export const reactionReportQuery = z.object({ reaction: z.string().min(1) });
export const reactionReportView = z.object({
  patient: z.string(),
  name: z.string(),
  reaction: z.string(),
  text: z.string(),
  /** What the schemes ask for and the notes do not say. */
  missing: z.array(z.string()),
  reported: z.array(z.string()),
});
export type ReactionReportView = z.infer<typeof reactionReportView>;
