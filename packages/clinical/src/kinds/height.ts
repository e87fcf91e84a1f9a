import { z } from 'zod';
import { clinicalRoles } from '../ledger/role.ts';
import { heightQuantity } from '../exact/quantity.ts';
import { entryKind } from './entry-kind.ts';

/** Height; the ideal weight uses the tallest the person has been as an adult. */
export const height = entryKind({
  name: 'height',
  of: 'patient',
  shape: 1,
  label: 'height',
  help: 'Peak adult height where known; a bent spine shrinks the measured one.',
  writes: clinicalRoles,
  body: z.object({ quantity: heightQuantity, which: z.enum(['peak adult', 'measured now']) }).readonly(),
  example: { quantity: { comparator: '', value: '160', unit: 'cm' }, which: 'peak adult' },
});
