import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText } from './fields.ts';

/** Whether the daily vitamin D is being taken, asked at the recall call. */
export const vitaminDMaintenance = entryKind({
  name: 'vitamin-d-maintenance',
  of: 'patient',
  shape: 1,
  label: 'vitamin D maintenance',
  help: 'Is the daily vitamin D being taken?',
  writes: careRoles,
  body: z.object({ taken: z.boolean(), product: shortText.optional() }).readonly(),
  example: { taken: true },
});
