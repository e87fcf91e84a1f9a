import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { infusionNurses, roles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, shortText } from './fields.ts';

/** Packs of a batch as they were counted at the opening or the closing of a session. */
export const batchCount = z
  .object({ batch: shortText, packs: z.number().int().min(0).max(10_000), note: shortText.optional() })
  .readonly();

/** The session is open: who is here, who may check, the kit, the chairs, the packs. Written anew when that changes. */
export const sessionOpened = entryKind({
  name: 'session-opened',
  of: 'session',
  shape: 1,
  label: 'session opened',
  help: 'Staff here, second checkers, emergency kit, chairs, packs counted.',
  writes: infusionNurses,
  body: z
    .object({
      present: z
        .array(z.object({ staff: shortText, role: z.enum(roles) }).readonly())
        .min(1, 'who is here')
        .max(40)
        .readonly(),
      secondCheckers: z.array(shortText).max(40).readonly(),
      /** `expiresOn`: what in it runs out first. */
      kit: z.object({ checkedBy: shortText, complete: z.boolean(), expiresOn: dateField }).readonly(),
      chairs: z.number().int().min(1).max(60),
      counts: z.array(batchCount).max(40).readonly(),
      note: shortText.optional(),
    })
    .readonly(),
  example: {
    present: [
      { staff: 's1', role: 'nurse in charge' },
      { staff: 's2', role: 'nurse' },
    ],
    secondCheckers: ['s1', 's2'],
    kit: { checkedBy: 's2', complete: true, expiresOn: '2027-03-31' as PlainDate },
    chairs: 6,
    counts: [{ batch: 'PA-2391', packs: 14 }],
  },
});
