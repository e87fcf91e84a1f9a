/** Who waits and falls due at a unit, with the sessions there are: what places are suggested from; and who could have one at once. */
import { z } from 'zod';
import { date } from './basics.ts';

/** What suggesting places needs. The request is the written request of planning, read again by whoever fills it. */
export const fillView = z.object({
  unit: z.string(),
  unitName: z.string(),
  today: date,
  /** Why there is nothing to suggest. */
  says: z.string().optional(),
  request: z.record(z.string(), z.unknown()).optional(),
  /** In the order of the request; `seq`: what was read of their notes. */
  people: z.array(z.object({ patient: z.string(), seq: z.number().int() })).readonly(),
  sessions: z
    .array(
      z.object({
        session: z.string(),
        on: date,
        minutesOpen: z.number().int(),
        free: z.array(z.object({ place: z.number().int(), arriveAt: z.string() })).readonly(),
      }),
    )
    .readonly(),
  /** No place is looked for, with what they need first. */
  leftOut: z.array(z.object({ patient: z.string(), name: z.string(), because: z.string() })).readonly(),
  groupings: z.array(z.object({ by: z.string(), of: z.array(z.string()).readonly() })).readonly(),
  hasUsualSettings: z.boolean(),
  /** How long bloods count, by the protocol; absent where there is nothing to suggest. */
  bloodsValidDays: z.number().int().optional(),
});
export type FillView = z.infer<typeof fillView>;

/** Who could have a place that came free, best first. */
export const standbyView = z.object({
  session: z.string(),
  on: date,
  /** The first free place; absent: the list is full. */
  place: z.object({ place: z.number().int(), arriveAt: z.string() }).optional(),
  says: z.string().optional(),
  list: z
    .array(
      z.object({
        patient: z.string(),
        name: z.string(),
        tier: z.string(),
        daysPastDue: z.number().int(),
        /** The later session they have a place in: it would come free. */
        from: z.object({ session: z.string(), on: date }).optional(),
        telephone: z.string().optional(),
        needs: z.array(z.string()).readonly(),
        seq: z.number().int(),
      }),
    )
    .readonly(),
});
export type StandbyView = z.infer<typeof standbyView>;
