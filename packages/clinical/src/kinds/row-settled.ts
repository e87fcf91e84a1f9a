import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, textField } from './fields.ts';

/** What became of a row that waited. */
export const rowSettled = entryKind({
  name: 'row-settled',
  of: 'register',
  shape: 1,
  label: 'row settled',
  help: 'Taken in, or left out and why.',
  writes: careRoles,
  body: z
    .object({
      fingerprint: shortText,
      row: z.number().int().min(1),
      outcome: z.enum(['taken in', 'left out']),
      reason: textField.optional(),
    })
    .readonly(),
  example: { fingerprint: 'sha256:...', row: 17, outcome: 'left out', reason: 'not our patient' },
});
