import { z } from 'zod';
import { infusionNurses } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, uuidField } from './fields.ts';

/** Who looks after this person in the session: the one to ask about them. Named anew when that changes; the newest counts. */
export const namedNurse = entryKind({
  name: 'named-nurse',
  of: 'session',
  shape: 1,
  label: 'named nurse',
  help: 'Which nurse looks after whom in this session.',
  writes: infusionNurses,
  body: z.object({ patient: uuidField, nurse: shortText }).readonly(),
  example: { patient: 'p1', nurse: 's2' },
});
