import { z } from 'zod';
import { infusionNurses } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, textField } from './fields.ts';

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
      clock: z.object({ boot: shortText, uptimeMilliseconds: z.number().min(0), wall: shortText }).readonly(),
    })
    .readonly(),
  example: {
    reason: 'swelling at the site, looked, resited',
    clock: { boot: 'b1', uptimeMilliseconds: 300000, wall: '2027-01-28T10:54:00.000Z' },
  },
});
