import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField } from './fields.ts';

/** Something told outside a visit that matters for a dose: back pain, height loss, thigh pain, a red eye. */
export const symptom = entryKind({
  name: 'symptom',
  of: 'patient',
  shape: 1,
  label: 'symptom',
  help: 'What the person told us. It counts until a prescriber or nurse clears it.',
  writes: careRoles,
  body: z
    .object({
      what: z.enum([
        'thigh, hip or groin pain',
        'back pain',
        'height loss',
        'eye pain or redness',
        'jaw pain',
        'tingling or cramps',
        'other',
      ]),
      note: textField.optional(),
    })
    .readonly(),
  example: { what: 'thigh, hip or groin pain' },
});
