import { z } from 'zod';
import { clinicalRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, textField } from './fields.ts';

/** What an allergy written as "other" is to. The first two hold no bone medicine; where it is not said nobody can tell. */
const otherAllergyTo = [
  'not a medicine',
  'medicine not for bones',
  'bisphosphonate',
  'denosumab',
  'romosozumab',
  'teriparatide',
  'not known which',
] as const;

/** Whether anything is known that the person reacts to. Silence is not "none". */
export const allergy = entryKind({
  name: 'allergy',
  of: 'patient',
  shape: 1,
  label: 'allergy',
  help: 'Say "none known" in so many words, or what and how. "Other" names its medicine: until it does, no dose is ready.',
  writes: clinicalRoles,
  body: z.discriminatedUnion('answer', [
    z.object({ answer: z.literal('none known') }).readonly(),
    z.object({ answer: z.literal('bisphosphonate'), reaction: textField }).readonly(),
    z
      .object({
        answer: z.literal('other'),
        substance: shortText,
        medicine: z.enum(otherAllergyTo).optional(),
        reaction: textField.optional(),
      })
      .readonly(),
  ]),
  example: { answer: 'other', substance: 'penicillin', medicine: 'medicine not for bones', reaction: 'rash' },
});
