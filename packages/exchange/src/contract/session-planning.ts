/** A session as a day to plan. */
import { z } from 'zod';
import { date } from './basics.ts';

/** What planning a session's times needs. The day is the written day of planning, read again by whoever plans it. */
export const sessionPlanningView = z.object({
  session: z.string(),
  unitName: z.string(),
  on: date,
  /** Why there is nothing to plan. */
  says: z.string().optional(),
  day: z.record(z.string(), z.unknown()).optional(),
  told: z.array(z.object({ name: z.string(), patient: z.string(), arrives: z.string() })).readonly(),
  /** Nobody has written the unit's own minutes and staff: starting values stand in. */
  hasUsualSettings: z.boolean(),
});
export type SessionPlanningView = z.infer<typeof sessionPlanningView>;
