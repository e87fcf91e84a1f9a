import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, textField, uuidField } from './fields.ts';

/** What came of a letter that asks for an answer: the answer, that we asked again, or that we stopped asking. */
export const letterAnswered = entryKind({
  name: 'letter-answered',
  of: 'patient',
  shape: 1,
  label: 'answer to a letter',
  help: 'What came back; or that they were asked again, and when somebody looks next.',
  writes: careRoles,
  body: z.discriminatedUnion('outcome', [
    z.object({ outcome: z.literal('answered'), letter: uuidField, words: textField }).readonly(),
    z
      .object({ outcome: z.literal('asked again'), letter: uuidField, chaseOn: dateField, words: textField.optional() })
      .readonly(),
    z.object({ outcome: z.literal('not asked further'), letter: uuidField, words: textField }).readonly(),
  ]),
  example: { outcome: 'asked again', letter: 'e12', chaseOn: '2026-12-15' as PlainDate },
});
