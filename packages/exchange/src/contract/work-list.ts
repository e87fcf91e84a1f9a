/** One pile of the work of a unit, opened: whom it is about, what is to be done, whose it is and by when. */
import { z } from 'zod';
import { date } from './basics.ts';

export const workListQuery = z.object({ unit: z.string().optional(), what: z.string() });

export const workListView = z.object({
  what: z.string(),
  unitName: z.string(),
  today: date,
  /** The longest due first. */
  rows: z.array(
    z.object({
      patient: z.string(),
      name: z.string(),
      says: z.string(),
      owner: z.string(),
      due: date,
      /** Where it is done. */
      to: z.string(),
    }),
  ),
});
export type WorkListView = z.infer<typeof workListView>;
