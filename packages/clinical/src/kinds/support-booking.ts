import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, shortText, textField, timeField, uuidField } from './fields.ts';

/** What is booked of its own and has to be there with the person. */
export const supports = ['transport', 'interpreter', 'hoist', 'wide chair'] as const;
export type Support = (typeof supports)[number];

/** A booking that goes with a place: made, not needed this time, or cancelled with whoever it was booked with. */
export const supportBooking = entryKind({
  name: 'support-booking',
  of: 'patient',
  shape: 1,
  label: 'transport, interpreter, hoist',
  help: 'With whom it is booked, their reference, for when; or why it is not needed; or that it was cancelled.',
  writes: careRoles,
  body: z.discriminatedUnion('answer', [
    z
      .object({
        answer: z.literal('booked'),
        what: z.enum(supports),
        /** The place it is for, as it stood then: a place that moves leaves it behind. */
        session: uuidField,
        on: dateField,
        arriveAt: timeField,
        bookedWith: shortText,
        reference: shortText.optional(),
        /** When it is to be there. */
        at: timeField.optional(),
        /** The booking that was moved by this one. */
        inPlaceOf: uuidField.optional(),
      })
      .readonly(),
    z
      .object({ answer: z.literal('not needed'), what: z.enum(supports), session: uuidField, reason: textField })
      .readonly(),
    z.object({ answer: z.literal('cancelled'), booking: uuidField, toldWhom: shortText }).readonly(),
  ]),
  example: {
    answer: 'booked',
    what: 'transport',
    session: 'thornbeck-2027-01-28',
    on: '2027-01-28' as PlainDate,
    arriveAt: '10:40',
    bookedWith: 'hospital transport desk',
    reference: 'T-4471',
    at: '09:50',
  },
});
