import { z } from 'zod';
import { infusionNurses } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, textField } from './fields.ts';

/** The questions of the day, each answered. A question left out was not asked. */
export const checklist = entryKind({
  name: 'checklist',
  of: 'patient',
  shape: 1,
  label: 'checklist',
  help: 'Every line is a question for today; nothing is preset.',
  writes: infusionNurses,
  body: z
    .object({
      answers: z
        .record(shortText, z.object({ answer: z.enum(['yes', 'no']), note: textField.optional() }).readonly())
        .readonly(),
    })
    .readonly(),
  example: { answers: { 'unwell-now': { answer: 'no' }, 'drunk-enough': { answer: 'yes' } } },
});
