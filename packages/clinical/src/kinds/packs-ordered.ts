import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, shortText } from './fields.ts';
import { packProducts } from './products.ts';

/** Packs were ordered for a unit. What comes of it is said where packs are received. */
export const packsOrdered = entryKind({
  name: 'packs-ordered',
  of: 'unit',
  shape: 1,
  label: 'packs ordered',
  help: 'Product, how many packs, when they are expected.',
  writes: registrants,
  body: z
    .object({
      product: z.enum(packProducts),
      packs: z.number().int().min(1).max(10_000),
      expectedOn: dateField,
      from: shortText.optional(),
      /** As the supplier names the order. */
      reference: shortText.optional(),
    })
    .readonly(),
  example: {
    product: 'zoledronic acid 5 mg in 100 mL',
    packs: 40,
    expectedOn: '2026-12-04' as PlainDate,
    from: 'hospital pharmacy',
  },
});
