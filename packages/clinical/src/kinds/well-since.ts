import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField } from './fields.ts';

/** Well again since `effectiveAt`: eating and drinking. */
export const wellSince = entryKind({
  name: 'well-since',
  of: 'patient',
  shape: 1,
  label: 'well since',
  help: 'The day from which the person has been well, eating and drinking.',
  writes: careRoles,
  body: z.object({ note: textField.optional() }).readonly(),
  example: {},
});
