/** The packs a unit keeps, and the batches that are not to be used. */
import { packProducts } from '@twelvemonth/clinical';
import { z } from 'zod';
import { date } from './basics.ts';

export const batchRow = z.object({
  batch: z.string(),
  /** Present while no pack of it may be used. */
  stopped: z
    .object({
      why: z.enum(['quarantine', 'batch recall']),
      since: date,
      by: z.string(),
      reason: z.string(),
      actWithin: z.string().optional(),
      toldBy: z.string().optional(),
      productNumber: z.string().optional(),
    })
    .optional(),
});
export type BatchRow = z.infer<typeof batchRow>;

export const stockView = z.object({
  unit: z.string(),
  unitName: z.string(),
  formulary: z.object({
    packs: z.array(z.object({ productNumber: z.string(), product: z.enum(packProducts) })),
    separatorSentAs: z.string().optional(),
    packsCarrySerial: z.boolean(),
  }),
  batches: z.array(batchRow),
});
export type StockView = z.infer<typeof stockView>;
