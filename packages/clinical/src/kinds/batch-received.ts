import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, productNumberField, shortText, uuidField } from './fields.ts';
import { packProducts } from './products.ts';

/** Packs of a batch came to a unit. */
export const batchReceived = entryKind({
  name: 'batch-received',
  of: 'batch',
  shape: 1,
  label: 'packs received',
  help: 'Batch, product and expiry as printed, and how many packs.',
  writes: registrants,
  body: z
    .object({
      unit: uuidField,
      batch: shortText,
      product: z.enum(packProducts),
      productNumber: productNumberField.optional(),
      expiresOn: dateField,
      packs: z.number().int().min(1).max(10_000),
      from: shortText.optional(),
      /** The order these packs are of. */
      order: uuidField.optional(),
    })
    .readonly(),
  example: {
    unit: 'thornbeck',
    batch: 'PA-2391',
    product: 'zoledronic acid 5 mg in 100 mL',
    expiresOn: '2028-04-30' as PlainDate,
    packs: 40,
    from: 'hospital pharmacy',
  },
});
