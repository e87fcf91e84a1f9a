import { z } from 'zod';
import { infusionNurses } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, textField } from './fields.ts';

/** The medicine has stopped running: whole, or in part with the volume given. */
export const infusionFinished = entryKind({
  name: 'infusion-finished',
  of: 'patient',
  shape: 1,
  label: 'infusion finished',
  help: 'Tap when the bag is empty, or say how much was given if it was stopped early.',
  writes: infusionNurses,
  body: z
    .object({
      milliliters: z.number().min(0).max(100),
      /** Seconds it ran, pauses left out; absent when no clock survived. */
      ranSeconds: z.number().min(0).optional(),
      /** Why it was stopped before the end. */
      stoppedBecause: textField.optional(),
      /** Where no clock survived: who timed it and by what. */
      timedBy: textField.optional(),
      /** Typed in from paper: minutes it stood still in all, as they were written there. */
      pausedMinutes: z.number().int().min(0).max(600).optional(),
      clock: z.object({ boot: shortText, uptimeMilliseconds: z.number().min(0), wall: shortText }).readonly(),
    })
    .readonly(),
  example: {
    milliliters: 100,
    ranSeconds: 1815,
    clock: { boot: 'b1', uptimeMilliseconds: 1935000, wall: '2027-01-28T11:21:15.000Z' },
  },
});
