import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField, uuidField } from './fields.ts';

/** A place on the list is free again. */
export const sessionPlaceReleased = entryKind({
  name: 'session-place-released',
  of: 'session',
  shape: 1,
  label: 'place released',
  help: 'Which place, and why.',
  writes: careRoles,
  body: z.object({ place: z.number().int().min(1).max(200), patient: uuidField, reason: textField }).readonly(),
  example: { place: 7, patient: 'p1', reason: 'transport not possible' },
});
