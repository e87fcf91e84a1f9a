import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText } from './fields.ts';

/** The cannula: where, how big, how many tries, by whom (the author). */
export const cannula = entryKind({
  name: 'cannula',
  of: 'patient',
  shape: 1,
  label: 'cannula',
  help: 'Site, gauge, number of tries, and whether it is in.',
  writes: registrants,
  body: z
    .object({
      site: z.enum(['left forearm', 'right forearm', 'left hand', 'right hand', 'left elbow', 'right elbow']),
      gauge: z.enum(['20', '22', '24']),
      tries: z.number().int().min(1).max(4),
      placed: z.boolean(),
      /** Why the arm to avoid was used all the same, and who agreed. */
      armToAvoidUsedBecause: shortText.optional(),
    })
    .readonly(),
  example: { site: 'right forearm', gauge: '22', tries: 1, placed: true },
});
