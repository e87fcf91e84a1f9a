import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField, uuidField } from './fields.ts';

/** Decisions made while an entry stood that was withdrawn or corrected later were looked at again. */
export const lookedAgain = entryKind({
  name: 'looked-again',
  of: 'patient',
  shape: 1,
  label: 'looked at again',
  help: 'Which withdrawal or correction it is about, and what you found: does each decision made before it still hold?',
  writes: registrants,
  body: z.object({ about: uuidField, finding: textField }).readonly(),
  example: { about: 'w1', finding: 'dose of 3 March was right by the older creatinine too' },
});
