import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText } from './fields.ts';

/** Sheets of the patient pack were given to the person, with the very text they hold. */
export const patientPack = entryKind({
  name: 'patient-pack',
  of: 'patient',
  shape: 1,
  label: 'patient pack given',
  help: 'Which sheets, how large, which words.',
  writes: careRoles,
  body: z
    .object({
      parts: z
        .array(z.enum(['getting ready', 'the day', 'afterwards', 'next year', 'easy page']))
        .min(1)
        .readonly(),
      size: z.enum(['normal', 'large', 'very large']),
      language: z.enum(['en-GB', 'en-US']),
      wording: shortText,
      text: z.string().min(1).max(20000),
    })
    .readonly(),
  example: {
    parts: ['getting ready', 'afterwards'],
    size: 'large',
    language: 'en-GB',
    wording: 'pack-1',
    text: 'Getting ready for your drip ...',
  },
});
