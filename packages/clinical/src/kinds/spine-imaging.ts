import { z } from 'zod';
import { clinicalRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField } from './fields.ts';

/** What a picture of the spine showed: many vertebral fractures are never felt. `effectiveAt` is the day it was taken. */
export const spineImaging = entryKind({
  name: 'spine-imaging',
  of: 'patient',
  shape: 1,
  label: 'spine imaging',
  help: 'What the report says. A new fracture is written as a fracture too, on the day it happened or was found.',
  writes: clinicalRoles,
  body: z
    .object({
      method: z.enum(['X-ray', 'density scanner', 'CT', 'MRI']),
      found: z.enum(['no fracture', 'old fracture only', 'new fracture', 'not conclusive']),
      levels: textField.optional(),
    })
    .readonly(),
  example: { method: 'density scanner', found: 'no fracture' },
});
