import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { toldBy } from './aftercare.ts';
import { entryKind } from './entry-kind.ts';
import { textField } from './fields.ts';

export const wishes = ['yes', 'not sure', 'no'] as const;
export const bloodsAgreed = ['form sent', 'a day is booked', 'taken already', 'not yet'] as const;

/** The talk before the next dose: what no other entry says. Teeth, weight and vitamin D are entries of their own, by the same act. */
export const recallTalk = entryKind({
  name: 'recall-talk',
  of: 'patient',
  shape: 1,
  label: 'asked before the next dose',
  help: 'Does the person still want it, is the address right, what is agreed about the bloods. What is left out was not asked.',
  writes: careRoles,
  body: z
    .object({
      toldBy: z.enum(toldBy),
      wants: z.enum(wishes).optional(),
      address: z.enum(['right', 'changed']).optional(),
      bloods: z.enum(bloodsAgreed).optional(),
      note: textField.optional(),
    })
    .readonly(),
  example: { toldBy: 'the person', wants: 'yes', address: 'right', bloods: 'form sent' },
});
