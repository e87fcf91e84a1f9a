import { z } from 'zod';
import { clinicalRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, textField } from './fields.ts';

/** A fracture of fragile bone. `effectiveAt` is the day it happened. */
export const fracture = entryKind({
  name: 'fracture',
  of: 'patient',
  shape: 1,
  label: 'fracture',
  help: 'Site, the day it happened (or that the day is not known), and whether a hip was repaired. Thigh shaft: from below the lesser trochanter down to the flare above the knee.',
  writes: clinicalRoles,
  body: z
    .object({
      site: z.enum(['hip', 'thigh shaft', 'spine', 'ribs', 'upper arm', 'wrist', 'shoulder', 'pelvis', 'other']),
      dateKnown: z.boolean(),
      /** Of another site: which bone. Hand, foot, skull, finger, toe and ankle are no fragility fractures (IOF 2012). */
      bone: shortText.optional(),
      /** For a hip: how it was treated. */
      treated: z.enum(['repaired', 'not repaired', 'not known']).optional(),
      note: textField.optional(),
    })
    .readonly(),
  example: { site: 'wrist', dateKnown: true },
});
