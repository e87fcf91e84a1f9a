import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, shortText } from './fields.ts';

/** What the preparer read off the pack, the prescription and the patient's identifiers, away from the patient. */
export const preparation = entryKind({
  name: 'preparation',
  of: 'patient',
  shape: 1,
  label: 'preparation',
  help: 'Read each from the pack itself.',
  writes: registrants,
  body: z
    .object({
      product: z.enum(['zoledronic acid 5 mg in 100 mL', 'zoledronic acid 4 mg', 'another product']),
      batch: shortText,
      expiresOn: dateField,
      minutes: z.number().int().min(1).max(240),
      identifiers: z
        .array(z.enum(['full name', 'birth date', 'number', 'address']))
        .min(2)
        .readonly(),
      clearAndColourless: z.boolean(),
    })
    .readonly(),
  example: {
    product: 'zoledronic acid 5 mg in 100 mL',
    batch: 'PA-2391',
    expiresOn: '2028-04-30' as PlainDate,
    minutes: 30,
    identifiers: ['full name', 'birth date'],
    clearAndColourless: true,
  },
});
