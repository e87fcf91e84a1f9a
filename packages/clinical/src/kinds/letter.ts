import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, shortText, uuidField } from './fields.ts';
import { letterSheet } from './letter-sheet.ts';

export const letterReaders = ['family doctor', 'patient', 'dentist', 'other service'] as const;
export type LetterReader = (typeof letterReaders)[number];
export const letterSubjects = [
  'dose given',
  'put off',
  'review',
  'transfer',
  'invitation',
  'bloods needed',
  'no answer',
  'closing',
  'request',
] as const;
export type LetterSubject = (typeof letterSubjects)[number];

/** A letter was read and signed, with the text that was signed. */
export const letter = entryKind({
  name: 'letter',
  of: 'patient',
  shape: 1,
  label: 'letter',
  help: 'To whom, about what.',
  writes: registrants,
  body: z
    .object({
      to: z.enum(letterReaders),
      about: z.enum(letterSubjects),
      version: shortText,
      text: z.string().min(1).max(20000),
      /** The letter as it prints. One without it went out as it was signed. */
      sheet: letterSheet.optional(),
      /** The draft that was signed. */
      draft: uuidField.optional(),
      /** When somebody asks for the answer, if none has come. */
      chaseOn: dateField.optional(),
    })
    .readonly(),
  example: {
    to: 'dentist',
    about: 'request',
    version: 'letters-1',
    text: 'Dear colleague ...',
    chaseOn: '2026-12-15' as PlainDate,
  },
});
