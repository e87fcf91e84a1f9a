import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, uuidField } from './fields.ts';

/** Packs left the shelf without being given to anybody. */
export const batchTakenOut = entryKind({
  name: 'batch-taken-out',
  of: 'batch',
  shape: 1,
  label: 'packs taken out',
  help: 'How many, and why: expired, broken, sent back, wasted.',
  writes: registrants,
  body: z
    .object({
      unit: uuidField,
      batch: shortText,
      packs: z.number().int().min(1).max(10_000),
      why: z.enum(['expired', 'broken', 'sent back', 'opened and not given', 'to another unit']),
      note: shortText.optional(),
    })
    .readonly(),
  example: { unit: 'thornbeck', batch: 'PA-2391', packs: 1, why: 'broken' },
});
