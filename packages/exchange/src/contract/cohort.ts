/** Who fell out where: of those who began in a year at a unit, who came for the second and third dose, and who did not and why. */
import { z } from 'zod';
import { date } from './basics.ts';

const one = z.object({
  patient: z.string(),
  name: z.string(),
  end: z.string(),
  from: date,
  on: date,
  days: z.number().int(),
  why: z.string(),
});
const line = z.object({
  says: z.string(),
  from: z.union([z.literal(0), z.literal(1)]),
  points: z.array(
    z.object({
      days: z.number().int(),
      share: z.number(),
      /** 95 in 100; absent where nothing was seen that could tell them. */
      limits: z.object({ lower: z.number(), upper: z.number() }).optional(),
    }),
  ),
});
const row = z.object({ days: z.number().int(), says: z.string(), atRisk: z.number().int() });

const curveView = z.object({
  title: z.string(),
  /** How it was counted, in a sentence. */
  counted: z.string(),
  people: z.number().int(),
  until: z.number().int(),
  rows: z.array(row),
  lines: z.array(line),
  /** How many came to each end, and how many are still under way. */
  ends: z.array(z.object({ end: z.string(), count: z.number().int() })),
  who: z.array(one),
});
export type CohortCurve = z.infer<typeof curveView>;

export const cohortQuery = z.object({
  unit: z.string().optional(),
  year: z
    .string()
    .regex(/^\d{4}$/)
    .optional(),
});
export const cohortView = z.object({
  unit: z.string(),
  today: date,
  years: z.array(z.object({ year: z.string(), began: z.number().int() })),
  /** The year shown; undefined: every year. */
  year: z.string().optional(),
  began: z.number().int(),
  curves: z.array(curveView),
  /** Kaplan-Meier of staying on treatment, beside the incidence of its ends. */
  staying: curveView.optional(),
});
export type CohortView = z.infer<typeof cohortView>;
