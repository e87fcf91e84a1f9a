import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField } from './fields.ts';

/** What the person felt after a dose. */
export const reaction = entryKind({
  name: 'reaction',
  of: 'patient',
  shape: 1,
  label: 'reaction',
  help: "What, how long, how bad in the person's own words. A severe one holds every dose until a prescriber has decided about it.",
  writes: careRoles,
  body: z
    .object({
      what: textField,
      days: z.number().int().min(0).max(365).optional(),
      severity: z.enum(['mild', 'moderate', 'severe']),
    })
    .readonly(),
  example: { what: 'flu-like, aching', days: 2, severity: 'mild' },
});
