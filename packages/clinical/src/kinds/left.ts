import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField } from './fields.ts';

/** How somebody goes: a booked transport is no reason to go unfit. Hazard 89. */
export const waysToLeave = ['fit to go', 'taken over by others', 'against advice'] as const;

/** The person has gone. Closes the visit. */
export const left = entryKind({
  name: 'left',
  of: 'patient',
  shape: 1,
  label: 'left',
  help: 'With whom, and that they hold the card with whom to call.',
  writes: careRoles,
  body: z
    .object({
      cardGiven: z.boolean(),
      /** Absent: nobody said. */
      leaves: z.enum(waysToLeave).optional(),
      note: textField.optional(),
    })
    .readonly()
    .refine(({ leaves, note }) => leaves === undefined || leaves === 'fit to go' || note !== undefined, {
      message: 'by whom, or what was said and by whom',
      path: ['note'],
    }),
  example: { cardGiven: true },
});
