import { z } from 'zod';
import { infusionNurses } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, textField } from './fields.ts';

/** Causes after which something must have been done before it runs again. */
const pauseCauses = ['the site', 'a reaction'] as const;

/** It does not run: paused minutes do not count towards the minimum. */
export const infusionPaused = entryKind({
  name: 'infusion-paused',
  of: 'patient',
  shape: 1,
  label: 'infusion paused',
  help: 'Why it was paused.',
  writes: infusionNurses,
  body: z
    .object({
      reason: textField,
      /** What made it stand still; absent: something else, or written before it was asked. */
      because: z.enum(pauseCauses).optional(),
      clock: z.object({ boot: shortText, uptimeMilliseconds: z.number().min(0), wall: shortText }).readonly(),
    })
    .readonly(),
  example: {
    reason: 'swelling at the site, looked, resited',
    clock: { boot: 'b1', uptimeMilliseconds: 300000, wall: '2027-01-28T10:54:00.000Z' },
  },
});
