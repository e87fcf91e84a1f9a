import { z } from 'zod';
import { infusionNurses } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText } from './fields.ts';
import { lineLookedAlong } from './infusion-started.ts';

/** It runs again. */
export const infusionResumed = entryKind({
  name: 'infusion-resumed',
  of: 'patient',
  shape: 1,
  label: 'infusion resumed',
  help: 'Tap when it runs again.',
  writes: infusionNurses,
  body: z
    .object({
      /** That they looked along the line before it ran again; absent in resumptions written before this was asked. */
      alongTheLine: z.literal(lineLookedAlong).optional(),
      clock: z.object({ boot: shortText, uptimeMilliseconds: z.number().min(0), wall: shortText }).readonly(),
    })
    .readonly(),
  example: {
    alongTheLine: lineLookedAlong,
    clock: { boot: 'b1', uptimeMilliseconds: 420000, wall: '2027-01-28T10:56:00.000Z' },
  },
});
