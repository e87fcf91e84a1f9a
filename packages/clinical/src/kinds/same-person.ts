import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField, uuidField } from './fields.ts';

/** What two people's notes can be compared by. */
export const comparedBy = [
  'name',
  'former name',
  'birth date',
  'number',
  'address',
  'telephone',
  'family doctor',
] as const;
const compared = z.enum(comparedBy);

/**
 * Whether these notes and other notes are about one person. Written in both by one act; the newest about those other notes
 * decides. Nothing is moved or rubbed out: notes that are one person's are read together, and can be read apart again.
 */
export const samePerson = entryKind({
  name: 'same-person',
  of: 'patient',
  shape: 1,
  label: 'one person or two',
  help: 'Compare the two side by side. One person: two people say so, each by two identifiers. Two people: what differs.',
  writes: careRoles,
  body: z.discriminatedUnion('answer', [
    z.object({ answer: z.literal('may be one'), other: uuidField, reason: textField }).readonly(),
    /** The first of two people says so; `kept` are the notes the other ones would be read in. */
    z
      .object({
        answer: z.literal('proposed'),
        other: uuidField,
        kept: uuidField,
        agree: z.array(compared).min(2, 'compare at least two identifiers').readonly(),
        reason: textField,
      })
      .readonly(),
    /** The second person says so too: from now on the two are read as one. */
    z
      .object({
        answer: z.literal('one'),
        other: uuidField,
        kept: uuidField,
        agree: z.array(compared).min(2, 'compare at least two identifiers').readonly(),
        reason: textField,
      })
      .readonly(),
    z
      .object({
        answer: z.literal('two'),
        other: uuidField,
        differ: z.array(compared).min(1, 'say what differs').readonly(),
        reason: textField,
      })
      .readonly(),
  ]),
  example: { answer: 'two', other: 'p2', differ: ['birth date', 'address'], reason: 'sisters-in-law, both asked' },
});
