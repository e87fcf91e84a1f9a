import { z } from 'zod';
import { infusionNurses } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, textField } from './fields.ts';
import { batchCount } from './session-opened.ts';

/** The session is over: everybody has an outcome, the packs add up, and somebody is handed what is left to do. */
export const sessionClosed = entryKind({
  name: 'session-closed',
  of: 'session',
  shape: 1,
  label: 'session closed',
  help: 'Packs counted, and the handover: what is left to do, and to whom.',
  writes: infusionNurses,
  body: z.object({ counts: z.array(batchCount).max(40).readonly(), handover: textField, to: shortText }).readonly(),
  example: { counts: [{ batch: 'PA-2391', packs: 3 }], handover: 'ring Mrs Tranter tomorrow at ten', to: 's2' },
});
