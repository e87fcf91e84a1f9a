import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField, uuidField } from './fields.ts';

/** Voids an earlier entry of the same ledger, with the reason. Both stay readable. */
export const withdrawal = entryKind({
  name: 'withdrawal',
  of: 'patient',
  shape: 1,
  label: 'withdrawn',
  help: 'Which entry, and why it should not count.',
  writes: careRoles,
  body: z
    .object({
      entry: uuidField,
      reason: textField,
      /** The patient in whose notes the same act wrote it anew. */
      movedTo: uuidField.optional(),
      /** Decisions made while it stood: someone looks at each again. */
      usedBy: z.array(uuidField).readonly().optional(),
    })
    .readonly(),
  example: { entry: 'e1', reason: 'written in the wrong notes' },
});
