import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, textField } from './fields.ts';

/** Somebody who had a pack of the batch was told about it: when, how, and what they said. */
export const toldOfBatch = entryKind({
  name: 'told-of-batch',
  of: 'patient',
  shape: 1,
  label: 'told about a batch',
  help: 'Which batch, how they were told, how they are.',
  writes: careRoles,
  body: z
    .object({
      batch: shortText,
      how: z.enum(['telephone', 'letter', 'in person', 'through their family doctor', 'through a relative or carer']),
      /** What was said, how they are; whether somebody has to look. */
      note: textField.optional(),
    })
    .readonly(),
  example: { batch: 'PA-2391', how: 'telephone', note: 'well; knows whom to ring' },
});
