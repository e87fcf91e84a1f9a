import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField, uuidField } from './fields.ts';

/** What the questions before a visit are about. The words are those of the letters; the visit asks all of it again. */
export const aheadQuestions = [
  'unwell-now',
  'ill-since-bloods',
  'new-medicine',
  'other-bone-medicine',
  'teeth',
  'thigh',
  'eye',
  'can-drink',
] as const;
export type AheadQuestion = (typeof aheadQuestions)[number];

/** Answers of the person to the questions before a visit. They settle nothing: somebody looks, and the visit asks again. */
export const toldAhead = entryKind({
  name: 'told-ahead',
  of: 'patient',
  shape: 1,
  label: 'told us before the visit',
  help: 'What they answered on their own page, on paper or by telephone, and whether they ask for another day. It clears nothing.',
  writes: careRoles,
  body: z
    .object({
      how: z.enum(['own page', 'on paper', 'by telephone']),
      /** The entry of the page it was written on. */
      page: uuidField.optional(),
      answers: z
        .partialRecord(
          z.enum(aheadQuestions),
          z.object({ answer: z.enum(['yes', 'no']), words: textField.optional() }).readonly(),
        )
        .readonly(),
      /** They ask for another day, in their words. */
      otherDay: textField.optional(),
    })
    .readonly(),
  example: {
    how: 'on paper',
    answers: { 'unwell-now': { answer: 'no' }, teeth: { answer: 'yes', words: 'a tooth comes out next week' } },
  },
});
