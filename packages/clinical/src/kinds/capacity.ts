import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField } from './fields.ts';

/**
 * Whether the person can make this decision at this time: understand it, keep it in mind, weigh it, tell it (Mental Capacity
 * Act 2005 sections 1 to 3, from memory; elsewhere by the law of the place). It is about one decision, never about a person.
 */
export const capacity = entryKind({
  name: 'capacity',
  of: 'patient',
  shape: 1,
  label: 'can they decide this?',
  help: 'Can they understand it, keep it in mind, weigh it and tell it, with every help? About this decision only.',
  writes: registrants,
  body: z.discriminatedUnion('answer', [
    z.object({ answer: z.literal('can decide this'), helped: textField.optional() }).readonly(),
    z
      .object({
        answer: z.literal('cannot decide this'),
        /** Which of the four they could not do, and how that was found. */
        because: textField,
        /** What was done to help: time of day, glasses, hearing aid, pictures, someone they trust. */
        tried: textField,
        mayReturn: z.enum(['yes', 'no', 'not known']),
      })
      .readonly(),
  ]),
  example: { answer: 'can decide this', helped: 'large print, her daughter with her' },
});
