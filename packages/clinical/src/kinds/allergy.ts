import { z } from 'zod';
import { clinicalRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, textField } from './fields.ts';

/** Whether anything is known that the person reacts to. Silence is not "none". */
export const allergy = entryKind({
  name: 'allergy',
  of: 'patient',
  shape: 1,
  label: 'allergy',
  help: 'Say "none known" in so many words, or what and how.',
  writes: clinicalRoles,
  body: z.discriminatedUnion('answer', [
    z.object({ answer: z.literal('none known') }).readonly(),
    z.object({ answer: z.literal('bisphosphonate'), reaction: textField }).readonly(),
    z.object({ answer: z.literal('other'), substance: shortText, reaction: textField.optional() }).readonly(),
  ]),
  example: { answer: 'other', substance: 'penicillin', reaction: 'rash' },
});
