import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField, uuidField } from './fields.ts';

/** Whom a call was about, or what was done about somebody who is nobody of ours. */
export const unknownCallSettled = entryKind({
  name: 'unknown-call-settled',
  of: 'unit',
  shape: 1,
  label: 'call settled',
  help: 'Whom it was about, or what was done.',
  writes: careRoles,
  body: z.object({ call: uuidField, patient: uuidField.optional(), outcome: textField }).readonly(),
  example: { call: 'c1', patient: 'p1', outcome: 'found by her birth date' },
});
