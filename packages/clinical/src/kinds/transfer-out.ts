import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, shortText } from './fields.ts';

/** Care goes to another service. Open until that service acknowledges it. */
export const transferOut = entryKind({
  name: 'transfer-out',
  of: 'patient',
  shape: 1,
  label: 'transferred out',
  help: 'To whom. It stays ours until they acknowledge.',
  writes: careRoles,
  body: z.object({ to: shortText, chaseOn: dateField }).readonly(),
  example: { to: "another hospital's bone unit", chaseOn: '2026-12-15' as PlainDate },
});
