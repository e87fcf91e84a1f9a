import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField } from './fields.ts';

/** The loading will not be finished. */
export const vitaminDLoadingStopped = entryKind({
  name: 'vitamin-d-loading-stopped',
  of: 'patient',
  shape: 1,
  label: 'vitamin D loading stopped',
  help: 'Why it will not be finished.',
  writes: registrants,
  body: z.object({ reason: textField }).readonly(),
  example: { reason: 'nausea with the capsules' },
});
