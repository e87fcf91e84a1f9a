import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField, uuidField } from './fields.ts';

/** A registered practitioner has looked into a symptom or a checklist answer and it no longer holds the dose. */
export const symptomCleared = entryKind({
  name: 'symptom-cleared',
  of: 'patient',
  shape: 1,
  label: 'symptom cleared',
  help: 'What was found, and that it no longer holds the dose.',
  writes: registrants,
  body: z.object({ entry: uuidField, finding: textField }).readonly(),
  example: { entry: 's1', finding: 'X-ray of both femurs clear, muscular pain, gone' },
});
