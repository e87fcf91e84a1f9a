import { z } from 'zod';
import { entryKind } from './entry-kind.ts';
import { dateField, shortText, textField } from './fields.ts';

/** Who decided: older reviews do not say. `decidedBy` where it was not the one who signs. */
const decision = {
  capacity: z.enum(['specialist', 'other prescriber']).optional(),
  decidedBy: shortText.optional(),
  reason: textField,
};

/** What a prescriber decided after the planned doses, or when something happened. */
export const courseReview = entryKind({
  name: 'course-review',
  of: 'patient',
  shape: 1,
  label: 'course review',
  help: 'Carry on to a number of doses, a planned break with its end and triggers, another medicine with its date, or stop; and who decided.',
  writes: ['prescriber'],
  body: z.discriminatedUnion('outcome', [
    z.object({ outcome: z.literal('carry on'), toDoses: z.number().int().min(1).max(10), ...decision }).readonly(),
    z
      .object({
        outcome: z.literal('planned break'),
        reviewOn: dateField,
        /** From which day the break is counted; the last infusion where nothing else is said. */
        countedFrom: dateField.optional(),
        triggers: textField,
        ...decision,
      })
      .readonly(),
    z.object({ outcome: z.literal('other treatment'), to: shortText, dueOn: dateField, ...decision }).readonly(),
    z.object({ outcome: z.literal('stop'), ...decision }).readonly(),
    z
      .object({ outcome: z.literal('new course'), plannedDoses: z.number().int().min(1).max(6), ...decision })
      .readonly(),
  ]),
  example: { outcome: 'carry on', toDoses: 6, capacity: 'specialist', reason: 'hip T -2.8, wrist fracture' },
});
