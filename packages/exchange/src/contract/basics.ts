/** Shapes that several answers share. Dates are `YYYY-MM-DD`, moments RFC 3339; every text is ready to show. */
import { z } from 'zod';

export const date = z.string().regex(/^\d{4}-\d{2}-\d{2}$/);
export const moment = z.string();
export const verdict = z.enum(['ready', 'not ready', 'cannot say', 'does not apply']);

export const refusal = z.object({
  name: z.string(),
  says: z.string(),
  field: z.string().optional(),
  remedy: z.string().optional(),
});

/** RFC 9457 problem details. `refusals` is our extension member: every reason, the first is the headline. */
export const problem = z.object({
  type: z.string(),
  title: z.string(),
  status: z.number().int(),
  detail: z.string().optional(),
  /** A number to quote when asking for help. */
  instance: z.string().optional(),
  refusals: z.array(refusal).optional(),
});
export type Problem = z.infer<typeof problem>;

export const standingView = z.object({
  standing: z.string(),
  says: z.string(),
  owner: z.string(),
  unit: z.string(),
  on: date.optional(),
  since: date,
});
export type StandingView = z.infer<typeof standingView>;

export const windowView = z.object({
  first: date,
  last: date.optional(),
  firstSession: date.optional(),
  lastSession: date.optional(),
  certain: z.boolean(),
  certainUntil: date.optional(),
  says: z.string(),
  waitingFor: z.array(z.object({ what: z.string(), until: date })),
  next: z.string().optional(),
  runsOut: z.string().optional(),
  runOn: z.string().optional(),
  otherwise: z.array(z.string()),
});
export type WindowView = z.infer<typeof windowView>;

export const placeView = z.object({
  session: z.string(),
  unit: z.string(),
  on: date,
  arriveAt: z.string(),
  place: z.number().int(),
});
export type PlaceView = z.infer<typeof placeView>;

/** A medicine waits for its successor: how urgently, and what to ask. */
export const clockView = z.object({
  tier: z.enum(['running', 'on the worklist', 'first in line', 'alarm', 'highest alarm']),
  medicine: z.string(),
  says: z.string(),
  due: date,
  ask: z.array(z.string()),
  prescriberToday: z.string().optional(),
});
export type ClockView = z.infer<typeof clockView>;
