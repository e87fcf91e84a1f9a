import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { clinicalRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, shortText, textField } from './fields.ts';

/** What has to be talked about before a decision, in the order in which it is told. */
export const talkTopics = [
  'why me',
  'what it does',
  'the choices',
  'no treatment',
  'how often and how long',
  'what it may feel like',
  'rare harms',
  'what to do before',
  'whom to call',
] as const;

/** A talk about treatment, and what the person decided. "Not now" and "more time" are decisions like the others, with a day. */
export const talk = entryKind({
  name: 'talk',
  of: 'patient',
  shape: 1,
  label: 'talk about treatment',
  help: 'What was talked about, what matters to the person, whether they could say it back, what they decided.',
  writes: clinicalRoles,
  body: z
    .object({
      topics: z.array(z.enum(talkTopics)).min(1, 'at least one topic').readonly(),
      /** What matters to them, in their own words. */
      matters: textField.optional(),
      teachBack: z.enum(['said it back', 'said it back at the second go', 'could not yet', 'not asked']),
      /** Who was there: a relative, a carer, an interpreter. */
      present: shortText.optional(),
      /** Which leaflet they hold, with its version. */
      leaflet: shortText.optional(),
      /** The reminder card that goes with the medicine. */
      cardGiven: z.boolean(),
      decision: z.enum(['this treatment', 'another treatment', 'no treatment', 'not now', 'more time']),
      /** In their own words: why, or which other treatment. */
      words: textField.optional(),
      askAgainOn: dateField.optional(),
    })
    .readonly(),
  example: {
    topics: ['why me', 'what it does', 'the choices', 'what it may feel like'],
    matters: 'to go on walking to the shops',
    teachBack: 'said it back',
    leaflet: 'yearly drip, version 4',
    cardGiven: true,
    decision: 'not now',
    words: 'after the wedding',
    askAgainOn: '2027-05-01' as PlainDate,
  },
});
