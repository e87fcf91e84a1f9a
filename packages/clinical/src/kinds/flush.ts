import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';

/** Saline through the cannula before the medicine is connected. */
export const flush = entryKind({
  name: 'flush',
  of: 'patient',
  shape: 1,
  label: 'saline flush',
  help: 'Millilitres of saline, and that it ran freely without swelling.',
  writes: registrants,
  body: z
    .object({ milliliters: z.number().min(1).max(50), ranFreely: z.boolean(), when: z.enum(['before', 'after']) })
    .readonly(),
  example: { milliliters: 10, ranFreely: true, when: 'before' },
});
