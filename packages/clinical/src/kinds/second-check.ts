import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { clockField, identifiersField, shortText, uuidField } from './fields.ts';
import { packProducts } from './products.ts';

/** Another person's own reading of pack, order and patient, made without seeing the first. */
export const secondCheck = entryKind({
  name: 'second-check',
  of: 'patient',
  shape: 1,
  label: 'independent second check',
  help: 'Your own reading. You are not shown what the preparer read.',
  writes: registrants,
  body: z
    .object({
      product: z.enum(packProducts),
      batchLastFour: z.string().trim().min(1).max(4),
      expiryMonth: z.string().regex(/^\d{4}-(0[1-9]|1[0-2])$/, 'year and month, YYYY-MM'),
      /** Read off the pump's display, where a pump runs it. */
      pumpMillilitersPerHour: z.number().min(1).max(1200).optional(),
      /** Where no pump runs it: in how many minutes it is to run. */
      minutes: z.number().int().min(1).max(240).optional(),
      identifiers: identifiersField,
      /** The preparation entry that was checked, and whether the two readings agree. */
      preparation: uuidField,
      agrees: z.boolean(),
      differs: z.array(shortText).readonly(),
      /** Typed in from the day sheet: whose signature stands there. The author is who typed it. */
      signedOnPaperBy: shortText.optional(),
      /** The server's: how long ago it was survives a changed clock. Absent in checks made before it was kept. */
      clock: clockField.optional(),
    })
    .readonly(),
  example: {
    product: 'zoledronic acid 5 mg in 100 mL',
    batchLastFour: '2391',
    expiryMonth: '2028-04',
    pumpMillilitersPerHour: 200,
    identifiers: ['full name', 'number'],
    preparation: 'p1',
    agrees: true,
    differs: [],
  },
});
