import { z } from 'zod';
import { entryKind } from './entry-kind.ts';
import { productNumberField } from './fields.ts';
import { packProducts } from './products.ts';

/** Which packs a unit keeps, by the product number in their code, and how its scanners type. The latest entry holds. */
export const formulary = entryKind({
  name: 'formulary',
  of: 'unit',
  shape: 1,
  label: 'packs the unit uses',
  help: 'Product number and product of each pack, also of look-alikes that are in the house.',
  writes: ['pharmacist'],
  body: z
    .object({
      packs: z
        .array(z.object({ productNumber: productNumberField, product: z.enum(packProducts) }).readonly())
        .max(100)
        .readonly(),
      /**
       * The sign the scanners type where the code has its separator; absent: they send the separator itself. Only a sign
       * that no batch or serial can hold (GS1 General Specifications, character set 82).
       */
      separatorSentAs: z
        .string()
        .regex(/^[~^#@$|\\{}[\]`]$/, 'one of ~ ^ # @ $ | \\ { } [ ] `: a sign no batch number can hold')
        .optional(),
      /** Packs here carry a serial number: a code without one is worth a look. */
      packsCarrySerial: z.boolean(),
    })
    .readonly(),
  example: {
    packs: [{ productNumber: '09506000134352', product: 'zoledronic acid 5 mg in 100 mL' }],
    packsCarrySerial: true,
  },
});
