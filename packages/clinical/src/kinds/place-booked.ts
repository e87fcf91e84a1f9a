import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, shortText, textField, timeField, uuidField } from './fields.ts';

/** A spot on a session's list, with the arrival time. The session's own notes are the truth; this is its mirror. */
export const placeBooked = entryKind({
  name: 'place-booked',
  of: 'patient',
  shape: 1,
  label: 'place booked',
  help: 'Which session and what time to come.',
  writes: careRoles,
  body: z
    .object({
      session: uuidField,
      unit: uuidField,
      on: dateField,
      arriveAt: timeField,
      place: z.number().int().min(1).max(200),
      /** Trouble on that date that whoever booked saw and took on, with the reason. */
      accepted: z
        .object({ causes: z.array(shortText).min(1).readonly(), reason: textField })
        .readonly()
        .optional(),
    })
    .readonly(),
  example: {
    session: 'thornbeck-2027-01-28',
    unit: 'thornbeck',
    on: '2027-01-28' as PlainDate,
    arriveAt: '10:40',
    place: 7,
  },
});
