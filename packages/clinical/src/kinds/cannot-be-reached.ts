import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, textField } from './fields.ts';

/** Tried by two routes and more; a nurse, not a timer, says so. */
export const cannotBeReached = entryKind({
  name: 'cannot-be-reached',
  of: 'patient',
  shape: 1,
  label: 'cannot be reached',
  help: 'What was tried, and when someone looks again.',
  writes: registrants,
  body: z.object({ tried: textField, lookAgainOn: dateField }).readonly(),
  example: { tried: 'three calls, a letter, the family doctor', lookAgainOn: '2027-03-01' as PlainDate },
});
