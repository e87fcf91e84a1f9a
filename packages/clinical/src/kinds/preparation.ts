import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, identifiersField, productNumberField, shortText } from './fields.ts';
import { packProducts } from './products.ts';

/** Why a pack was typed and not scanned. */
export const typedBecause = [
  'the pack has no square code',
  'the code cannot be read',
  'the scanner does not work',
  'typed in later',
] as const;

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
      product: z.enum(packProducts),
      batch: shortText,
      expiresOn: dateField,
      /** In how many minutes a drip is to run; an injection has none. */
      minutes: z.number().int().min(1).max(240).optional(),
      identifiers: identifiersField,
      clearAndColourless: z.boolean(),
      /** The code as the scanner gave it, its separator written as a sign one can see; product number and serial in it. */
      scan: z
        .object({ code: shortText, productNumber: productNumberField, serial: shortText.optional() })
        .readonly()
        .optional(),
      /** Not scanned: why. Absent beside an absent scan: the unit has no list of its packs to scan against. */
      typedBecause: z.enum(typedBecause).optional(),
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
