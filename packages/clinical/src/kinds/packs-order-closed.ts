import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField, uuidField } from './fields.ts';

/** What is still open of an order will not come. */
export const packsOrderClosed = entryKind({
  name: 'packs-order-closed',
  of: 'unit',
  shape: 1,
  label: 'order closed',
  help: 'Which order, and why nothing more comes of it.',
  writes: registrants,
  body: z.object({ order: uuidField, reason: textField }).readonly(),
  example: { order: 'o1', reason: 'the supplier cannot deliver' },
});
