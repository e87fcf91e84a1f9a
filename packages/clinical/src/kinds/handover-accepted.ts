import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField } from './fields.ts';

/** Whoever was handed what is left to do has read it and takes it on. */
export const handoverAccepted = entryKind({
  name: 'handover-accepted',
  of: 'session',
  shape: 1,
  label: 'handover accepted',
  help: 'You have read it and take it on.',
  writes: registrants,
  body: z.object({ note: textField.optional() }).readonly(),
  example: { note: 'asked about chair 4, all clear' },
});
