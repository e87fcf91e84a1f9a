import { z } from 'zod';
import { entryKind } from './entry-kind.ts';
import { dateField, shortText, textField } from './fields.ts';

/** What a prescriber decided after the planned doses, or when something happened. */
export const courseReview = entryKind({
  name: 'course-review',
  of: 'patient',
  shape: 1,
  label: 'course review',
  help: 'Carry on to a number of doses, a planned break with its end and triggers, another medicine, or stop.',
  writes: ['prescriber'],
  body: z.discriminatedUnion('outcome', [
    z
      .object({ outcome: z.literal('carry on'), toDoses: z.number().int().min(1).max(10), reason: textField })
      .readonly(),
    z
      .object({ outcome: z.literal('planned break'), reviewOn: dateField, triggers: textField, reason: textField })
      .readonly(),
    z.object({ outcome: z.literal('other treatment'), to: shortText, dueOn: dateField, reason: textField }).readonly(),
    z.object({ outcome: z.literal('stop'), reason: textField }).readonly(),
    z
      .object({ outcome: z.literal('new course'), plannedDoses: z.number().int().min(1).max(6), reason: textField })
      .readonly(),
  ]),
  example: { outcome: 'carry on', toDoses: 6, reason: 'hip T -2.8, wrist fracture' },
});
