import { z } from 'zod';
import { entryKind } from './entry-kind.ts';
import { textField, uuidField } from './fields.ts';

/** From now on nobody orders or gives under it, also under an order recorded before. */
export const groupDirectionEnded = entryKind({
  name: 'group-direction-ended',
  of: 'unit',
  shape: 1,
  label: 'group direction ended',
  help: 'Which, and why.',
  writes: ['prescriber', 'pharmacist', 'nurse in charge'],
  body: z.object({ direction: uuidField, reason: textField }).readonly(),
  example: { direction: '0198c3a2-7b1e-7c31-8a52-5f0c6f1d2e3a', reason: 'replaced by the hospital' },
});
