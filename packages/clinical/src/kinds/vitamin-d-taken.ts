import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';

/** Loading doses the person says, or was seen, to have taken on `effectiveAt`. */
export const vitaminDTaken = entryKind({
  name: 'vitamin-d-taken',
  of: 'patient',
  shape: 1,
  label: 'vitamin D loading taken',
  help: 'How many doses were taken that day, and how you know.',
  writes: careRoles,
  body: z
    .object({ doses: z.number().int().min(1).max(120), source: z.enum(['told us', 'capsules counted', 'seen taken']) })
    .readonly(),
  example: { doses: 1, source: 'told us' },
});
