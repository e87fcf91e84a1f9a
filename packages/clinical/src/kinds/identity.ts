import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { birthField, shortText } from './fields.ts';

/** Who the person is. The first entry of every patient's notes; later ones amend it. */
export const identity = entryKind({
  name: 'identity',
  of: 'patient',
  shape: 1,
  label: 'identity',
  help: 'Name as the person gives it, birth date (or only the year if that is all that is known), sex as registered, number.',
  writes: careRoles,
  body: z
    .object({
      family: shortText,
      given: shortText,
      title: shortText.optional(),
      formerNames: z.array(shortText).readonly().optional(),
      born: birthField,
      /** Sex for the clearance formula. Absent: not recorded, and the clearance cannot be said. */
      sex: z.enum(['female', 'male']).optional(),
      /** The number this service knows the person by. */
      number: shortText,
    })
    .readonly(),
  example: { family: 'Arkwright-Poe', given: 'Wilhelmina', born: '1941-06-02', sex: 'female', number: '999 204 7713' },
});
