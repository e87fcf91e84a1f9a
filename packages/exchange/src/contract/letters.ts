/** Letters: one written for a person, and all of a unit from what is called for to what was answered. */
import { letterReaders, letterSheet, letterSubjects } from '@twelvemonth/clinical';
import { z } from 'zod';
import { date } from './basics.ts';

const which = { to: z.enum(letterReaders), about: z.enum(letterSubjects) };

export const writtenLetterQuery = z.object({
  ...which,
  language: z.enum(['en-GB', 'en-US']).optional(),
  /** What is asked of a family doctor, with commas between. */
  wanted: z.string().max(200).optional(),
  /** A sentence or two of the writer's own; in a letter about a put-off: what comes next. */
  words: z.string().trim().min(1).max(600).optional(),
  /** A draft in place of a new letter: as it was drafted, for this signature and of today. */
  draft: z.string().max(80).optional(),
});
export type LetterAsked = z.infer<typeof writtenLetterQuery>;

export const writtenLetterView = z.object({
  ...which,
  patient: z.string(),
  seq: z.number().int(),
  name: z.string(),
  born: z.string(),
  number: z.string(),
  today: date,
  sheet: letterSheet,
  text: z.string(),
  /** Why it may not be printed; empty: it may. */
  notPrintable: z.array(z.string()),
  chaseOn: date.optional(),
});
export type WrittenLetterView = z.infer<typeof writtenLetterView>;

const ofPerson = { ...which, patient: z.string(), seq: z.number().int(), name: z.string(), number: z.string() };

export const calledForRow = z.object({
  ...ofPerson,
  because: z.string(),
  since: date,
  notPrintable: z.array(z.string()),
});
export type CalledForRow = z.infer<typeof calledForRow>;

export const letterRow = z.object({
  ...ofPerson,
  /** The entry: the draft where it waits for a signature, else the letter. */
  entry: z.string(),
  on: date,
  by: z.string(),
  waitsFor: z.enum(['signature', 'sending', 'answer']).optional(),
  /** For an answer: when somebody asks for it. */
  due: date,
  /** "sent by post on 25 Nov 2026" */
  state: z.string(),
  /** Why it may not go out any more: they have died, or want no contact. */
  stopped: z.string().optional(),
});
export type LetterRow = z.infer<typeof letterRow>;

export const lettersView = z.object({
  unit: z.string(),
  unitName: z.string(),
  today: date,
  calledFor: z.array(calledForRow),
  toSign: z.array(letterRow),
  toSend: z.array(letterRow),
  toAnswer: z.array(letterRow),
  /** The newest first, and how many more there are. */
  sent: z.array(letterRow),
  more: z.number().int(),
});
export type LettersView = z.infer<typeof lettersView>;

export const lettersOfPersonView = z.object({
  patient: z.string(),
  name: z.string(),
  born: z.string(),
  number: z.string(),
  today: date,
  language: z.enum(['en-GB', 'en-US']),
  /** Every letter there is, and why one cannot be written now. */
  choices: z.array(z.object({ ...which, because: z.string().optional(), calledFor: z.boolean() })),
  letters: z.array(letterRow),
});
export type LettersOfPersonView = z.infer<typeof lettersOfPersonView>;
