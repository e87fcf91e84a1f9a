import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, textField } from './fields.ts';

/** What the person, or the dentist, says of teeth and jaw. */
export const dental = entryKind({
  name: 'dental',
  of: 'patient',
  shape: 1,
  label: 'teeth and jaw',
  help: 'Last check, pending work, unhealed socket. Trouble ends only when somebody has seen that nothing is left to heal.',
  writes: careRoles,
  body: z
    .object({
      answer: z.enum([
        'nothing pending',
        'work pending',
        'socket not healed',
        'jaw pain or loose tooth',
        'sore or loose denture',
        'seen: nothing left to heal',
        'cannot get a dentist',
      ]),
      checkedOn: dateField.optional(),
      note: textField.optional(),
    })
    .readonly(),
  example: { answer: 'nothing pending', checkedOn: '2026-09-03' as PlainDate },
});
