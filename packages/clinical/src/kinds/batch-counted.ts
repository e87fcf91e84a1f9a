import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, uuidField } from './fields.ts';

/** How many packs of a batch are really there: from here on the sum begins again. */
export const batchCounted = entryKind({
  name: 'batch-counted',
  of: 'batch',
  shape: 1,
  label: 'packs counted',
  help: 'What lies on the shelf now, opened packs left out.',
  writes: registrants,
  body: z
    .object({
      unit: uuidField,
      batch: shortText,
      packs: z.number().int().min(0).max(10_000),
      /** Where the count is not what the sum said: what is known about it. */
      note: shortText.optional(),
    })
    .readonly(),
  example: { unit: 'thornbeck', batch: 'PA-2391', packs: 38, note: 'one bottle broken, not written down' },
});
