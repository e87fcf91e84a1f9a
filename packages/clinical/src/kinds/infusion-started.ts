import { z } from 'zod';
import { infusionNurses } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { clockField, identifiersField } from './fields.ts';
import { packProducts } from './products.ts';

/** What whoever connects the line has to have found along it. */
export const lineLookedAlong = 'vented set, no air, clamp shut';
/** Typed in later from a sheet on which nobody ticked it: nobody can say any more. */
export const lineNotOnPaper = 'not written on the paper';

/** The medicine is running. Keeps the server's boot, uptime and wall clock so that running time survives a changed clock. */
export const infusionStarted = entryKind({
  name: 'infusion-started',
  of: 'patient',
  shape: 1,
  label: 'infusion started',
  help: 'Tap when it starts to run.',
  writes: infusionNurses,
  body: z
    .object({
      plannedMinutes: z.number().int().min(1).max(240),
      /** What was asked and matched at the chair, before the line was connected. */
      identifiers: identifiersField.optional(),
      /** That they looked along the line before it was connected; absent in starts written before this was asked. */
      alongTheLine: z.enum([lineLookedAlong, lineNotOnPaper]).optional(),
      /** Read once more off the pack at the chair, where too long went by since the second check. */
      packAgain: z
        .object({ product: z.enum(packProducts), batchLastFour: z.string().trim().min(1).max(4) })
        .readonly()
        .optional(),
      clock: clockField,
    })
    .readonly(),
  example: {
    plannedMinutes: 30,
    alongTheLine: lineLookedAlong,
    clock: { boot: 'b1', uptimeMilliseconds: 120000, wall: '2027-01-28T10:51:00.000Z' },
  },
});
