import { z } from 'zod';
import { entryKind } from './entry-kind.ts';
import { shortText, textField, uuidField } from './fields.ts';

/** The batch may be used again: a pharmacist has looked. */
export const batchReleased = entryKind({
  name: 'batch-released',
  of: 'batch',
  shape: 1,
  label: 'batch released',
  help: 'What was found, and why the batch may be used again.',
  writes: ['pharmacist'],
  body: z
    .object({
      batch: shortText,
      reason: textField,
      /** The stop that is lifted; absent: the only one there was. */
      stop: uuidField.optional(),
    })
    .readonly(),
  example: { batch: 'PA-2391', reason: 'cartons dented, bottles whole; looked at each' },
});
