import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, textField } from './fields.ts';

/** A named prescriber lets one requirement be passed over, with a reason, until a date. Possible for a few only. */
export const prescriberException = entryKind({
  name: 'prescriber-exception',
  of: 'patient',
  shape: 1,
  label: "prescriber's exception",
  help: 'Which requirement, why, until when. It is shown on the list.',
  writes: ['prescriber'],
  body: z
    .object({
      requirement: z.enum(['hip repair', 'vitamin D', 'teeth and jaw', 'age of bloods', 'course review']),
      reason: textField,
      expiresOn: dateField,
    })
    .readonly(),
  example: {
    requirement: 'hip repair',
    reason: 'given before discharge on the orthogeriatric protocol',
    expiresOn: '2026-12-10' as PlainDate,
  },
});
