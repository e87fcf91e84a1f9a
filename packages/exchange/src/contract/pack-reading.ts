/** A pack that was scanned: what its code says, and everything that speaks against using it. */
import { packProducts } from '@twelvemonth/clinical';
import { z } from 'zod';
import { date, refusal } from './basics.ts';

export const readPackBody = z.object({ code: z.string().max(200) });
export const packReading = z.object({
  /** Absent: the code could not be read. */
  pack: z
    .object({
      /** The scan as it is kept in the notes. */
      code: z.string(),
      productNumber: z.string(),
      product: z.enum(packProducts).optional(),
      batch: z.string().optional(),
      expiresOn: date.optional(),
      serial: z.string().optional(),
      /** What to look at on the pack before going on. */
      lookAt: z.array(z.string()),
    })
    .optional(),
  troubles: z.array(refusal),
});
export type PackReadingView = z.infer<typeof packReading>;
