import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { roles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, shortText } from './fields.ts';

/** What somebody has shown they can do, and how long that counts. Local policy says what is asked for and for how long. */
export const competences = ['medicines into a vein', 'cannula', 'life support'] as const;

export const competence = entryKind({
  name: 'competence',
  of: 'unit',
  shape: 1,
  label: 'competence',
  help: 'Who, in which role, what they have shown, and until when it counts.',
  writes: ['nurse in charge', 'service lead'],
  body: z.object({ staff: shortText, role: z.enum(roles), what: z.enum(competences), until: dateField }).readonly(),
  example: { staff: 's1', role: 'nurse', what: 'medicines into a vein', until: '2027-06-30' as PlainDate },
});
