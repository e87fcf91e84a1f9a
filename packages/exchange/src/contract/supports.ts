/** Bookings that go with a place: transport, interpreter, hoist, wide chair. */
import { z } from 'zod';
import { date } from './basics.ts';

export const supportLine = z.object({
  what: z.enum(['transport', 'interpreter', 'hoist', 'wide chair']),
  state: z.enum(['to arrange', 'booked', 'not needed', 'to be moved', 'to be cancelled']),
  /** The whole of it in words, ready to show. */
  says: z.string(),
  /** The booking, where there is one. */
  booking: z.string().optional(),
});
export type SupportLineView = z.infer<typeof supportLine>;

export const supportsView = z.object({
  patient: z.string(),
  seq: z.number().int(),
  name: z.string(),
  bornInWords: z.string(),
  number: z.string(),
  telephone: z.string().optional(),
  needs: z.array(z.string()),
  /** The next place; absent: they have none. */
  place: z.object({ session: z.string(), on: date, arriveAt: z.string() }).optional(),
  lines: z.array(supportLine),
});
export type SupportsView = z.infer<typeof supportsView>;
