import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';

/** The cannula is out. */
export const cannulaRemoved = entryKind({
  name: 'cannula-removed',
  of: 'patient',
  shape: 1,
  label: 'cannula removed',
  help: 'How the site looks.',
  writes: registrants,
  body: z.object({ site: z.enum(['looks well', 'red', 'swollen', 'bruised']) }).readonly(),
  example: { site: 'looks well' },
});
