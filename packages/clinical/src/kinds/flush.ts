import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';

/** Saline through the cannula before the medicine is connected. */
export const flush = entryKind({
  name: 'flush',
  of: 'patient',
  shape: 1,
  label: 'saline flush',
  help: 'Millilitres of saline, that it ran freely without swelling, and that nothing with calcium is in the line.',
  writes: registrants,
  body: z
    .object({
      milliliters: z.number().min(1).max(50),
      ranFreely: z.boolean(),
      /** Something with calcium (Ringer's, Hartmann's) runs or ran through this line: asked before the dose (EU product text 6.2). */
      calciumInLine: z.boolean().optional(),
      when: z.enum(['before', 'after']),
    })
    .readonly(),
  example: { milliliters: 10, ranFreely: true, calciumInLine: false, when: 'before' },
});
