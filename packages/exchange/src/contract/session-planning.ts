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
  /** On the day itself: the time on the unit's wall, and what has happened of each visit by now. */
  today: z
    .object({
      time: z.string(),
      soFar: z
        .array(
          z.object({
            name: z.string(),
            state: z.enum(['expected', 'here', 'gone', 'put off']),
            arrived: z.string().optional(),
            chair: z.number().optional(),
            done: z.array(z.string()).readonly(),
            runs: z
              .object({ step: z.string(), since: z.string(), until: z.string().optional(), paused: z.boolean() })
              .optional(),
            prepared: z.string().optional(),
            checked: z.string().optional(),
          }),
        )
        .readonly(),
    })
    .optional(),
  /** Nobody has written the unit's own minutes and staff: starting values stand in. */
  hasUsualSettings: z.boolean(),
});
export type SessionPlanningView = z.infer<typeof sessionPlanningView>;
