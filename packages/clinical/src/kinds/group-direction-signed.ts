import { z } from 'zod';
import { entryKind } from './entry-kind.ts';
import { uuidField } from './fields.ts';

/** The second signature, on that very text: a changed direction is another one. */
export const groupDirectionSigned = entryKind({
  name: 'group-direction-signed',
  of: 'unit',
  shape: 1,
  label: 'group direction signed by a pharmacist',
  help: 'The direction that was read.',
  writes: ['pharmacist'],
  body: z.object({ direction: uuidField }).readonly(),
  example: { direction: '0198c3a2-7b1e-7c31-8a52-5f0c6f1d2e3a' },
});
