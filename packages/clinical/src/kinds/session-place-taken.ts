import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { timeField, uuidField } from './fields.ts';

/** A place on the list is this patient's. */
export const sessionPlaceTaken = entryKind({
  name: 'session-place-taken',
  of: 'session',
  shape: 1,
  label: 'place taken',
  help: 'Which place, whose.',
  writes: careRoles,
  body: z
    .object({
      place: z.number().int().min(1).max(200),
      patient: uuidField,
      /** When this person comes, where they were told another time than the list has for the place. */
      arriveAt: timeField.optional(),
    })
    .readonly(),
  example: { place: 7, patient: 'p1' },
});
