/** A review of the course: what forces it, what is gathered, what is missing, what each decision would lead to. */
import { z } from 'zod';
import { date } from './basics.ts';

const gatheredLine = z.object({
  says: z.string(),
  /** The entries it rests on. */
  entries: z.array(z.string()),
});

export const criterionView = z.object({
  asks: z.string(),
  is: z.enum(['met', 'not met', 'cannot say']),
  says: z.string(),
  entries: z.array(z.string()),
  source: z.string(),
});
export type CriterionView = z.infer<typeof criterionView>;

export const reviewView = z.object({
  patient: z.string(),
  seq: z.number().int(),
  name: z.string(),
  born: z.string(),
  number: z.string(),
  unit: z.string(),
  standing: z.string(),
  today: date,
  protocolVersion: z.string(),
  /** Why it is asked for; undefined: it is not. */
  needed: z.object({ says: z.string(), since: date }).optional(),
  events: z.array(z.object({ says: z.string(), entry: z.string() })),
  sections: z.array(
    z.object({
      title: z.string(),
      lines: z.array(gatheredLine),
      none: z.string(),
      source: z.string().optional(),
    }),
  ),
  carryingOn: z.array(criterionView),
  failure: z.object({ is: criterionView.shape.is, says: z.string(), criteria: z.array(criterionView) }),
  gaps: z.array(z.object({ says: z.string(), record: z.string() })),
  /** For what follows from a decision, worked out while it is typed. */
  basis: z.object({
    today: date,
    given: z.number().int(),
    lifetime: z.number().int(),
    consecutive: z.number().int(),
    maxConsecutive: z.number().int(),
    needsSpecialist: z.boolean(),
    lastDose: date.optional(),
    anniversary: date.optional(),
    recallLeadDays: z.number().optional(),
    breakUntil: date.optional(),
    breakLatest: date,
    booked: date.optional(),
    steroids: z.array(z.string()),
  }),
  /** A review is written: there is a letter about it. */
  reviewed: z.boolean(),
  cautions: z.array(z.string()),
});
export type ReviewView = z.infer<typeof reviewView>;
