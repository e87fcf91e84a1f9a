import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField, uuidField } from './fields.ts';

/** A registered practitioner has looked into one symptom, or one answer of a checklist, and it no longer holds the dose. */
export const symptomCleared = entryKind({
  name: 'symptom-cleared',
  of: 'patient',
  shape: 1,
  label: 'symptom cleared',
  help: 'Which symptom or answer, what was found, and that it no longer holds the dose.',
  writes: registrants,
  body: z
    .object({
      entry: uuidField,
      /** The question of the checklist that is cleared, by its id in the protocol; the others stay. Not for a symptom. */
      question: textField.optional(),
      finding: textField,
    })
    .readonly(),
  example: { entry: 's1', finding: 'X-ray of both femurs clear, muscular pain, gone' },
});
