import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField, uuidField } from './fields.ts';

/** A registered practitioner has seen these results and takes them as the person's own. */
export const resultsSigned = entryKind({
  name: 'results-signed',
  of: 'patient',
  shape: 1,
  label: 'results signed',
  help: 'You have read these results and they belong to this person.',
  writes: registrants,
  body: z.object({ results: z.array(uuidField).min(1).readonly(), note: textField.optional() }).readonly(),
  example: { results: ['r1'] },
});
