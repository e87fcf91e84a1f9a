import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { productNumberField, shortText, textField } from './fields.ts';

/** No pack of the batch is used: put aside until someone has looked, or recalled by its maker or the regulator. */
export const batchStopped = entryKind({
  name: 'batch-stopped',
  of: 'batch',
  shape: 1,
  label: 'batch stopped',
  help: 'Quarantine or batch recall, why, and who said so.',
  writes: registrants,
  body: z
    .object({
      batch: shortText,
      why: z.enum(['quarantine', 'batch recall']),
      /** How soon a batch recall must have been acted upon, as its notice says. */
      actWithin: z.enum(['at once', '48 hours', '5 days']).optional(),
      /** Where two makers use the same batch number: whose. Absent: every pack with the number. */
      productNumber: productNumberField.optional(),
      reason: textField,
      toldBy: shortText.optional(),
    })
    .readonly(),
  example: {
    batch: 'PA-2391',
    why: 'batch recall',
    actWithin: '48 hours',
    reason: 'particles seen in bottles of this batch',
    toldBy: 'notice 14 of the regulator',
  },
});
