import { z } from 'zod';
import { clinicalRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField } from './fields.ts';

/** Pregnant, breast-feeding, or why that cannot be. Never inferred from age or sex. */
export const pregnancy = entryKind({
  name: 'pregnancy',
  of: 'patient',
  shape: 1,
  label: 'pregnancy and breast-feeding',
  help: 'Ask. "Does not apply" needs its reason.',
  writes: clinicalRoles,
  body: z.discriminatedUnion('answer', [
    z.object({ answer: z.literal('does not apply'), reason: textField }).readonly(),
    z.object({ answer: z.literal('no') }).readonly(),
    z.object({ answer: z.literal('pregnant') }).readonly(),
    z.object({ answer: z.literal('breast-feeding') }).readonly(),
  ]),
  example: { answer: 'does not apply', reason: 'told us: twenty years past the menopause' },
});
