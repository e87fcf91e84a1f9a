import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField, uuidField } from './fields.ts';

/** The booked place is no longer this person's. */
export const placeGivenUp = entryKind({
  name: 'place-given-up',
  of: 'patient',
  shape: 1,
  label: 'place given up',
  help: 'Why, and who asked.',
  writes: careRoles,
  body: z.object({ session: uuidField, reason: textField, askedBy: z.enum(['the patient', 'the unit']) }).readonly(),
  example: { session: 'thornbeck-2027-01-28', reason: 'transport not possible', askedBy: 'the patient' },
});
