import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, textField, uuidField } from './fields.ts';

/** A red flag, or a promise to ring back, of an advice-line call: what came of it and who was told. */
export const adviceAnswered = entryKind({
  name: 'advice-answered',
  of: 'patient',
  shape: 1,
  label: 'advice-line call answered',
  help: 'Which call, what was found and done, and that the person was told.',
  writes: registrants,
  body: z
    .object({
      about: uuidField,
      outcome: textField,
      /** Somebody else was named when the flag was passed on: they still have to hear of it. */
      inPlaceOf: shortText.optional(),
    })
    .readonly(),
  example: { about: 'c1', outcome: 'seen today, chest infection, antibiotic; daughter told' },
});
