/** The advice line of a unit: who may take a red flag on, and the calls that still wait for somebody. */
import { z } from 'zod';
import { date, moment } from './basics.ts';

export const waitingCallsView = z.object({
  unit: z.string(),
  unitName: z.string(),
  /** Prescribers first, then the other registered people, by name. */
  takers: z.array(z.object({ name: z.string(), role: z.string() })),
  /** About somebody known: a red flag nobody has answered, or a promise to ring back. */
  open: z.array(
    z.object({
      patient: z.string(),
      name: z.string(),
      call: z.string(),
      says: z.string(),
      waitsFor: z.enum(['an answer', 'a call back']),
      due: date,
    }),
  ),
  /** About somebody not found here. */
  unknown: z.array(z.object({ call: z.string(), says: z.string(), at: moment, by: z.string(), redFlag: z.boolean() })),
});
export type WaitingCallsView = z.infer<typeof waitingCallsView>;
