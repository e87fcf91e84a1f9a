/** Recall: whom to call, and what is known of each. */
import { z } from 'zod';
import { clockView, date, standingView } from './basics.ts';

export const recallRow = z.object({
  patient: z.string(),
  name: z.string(),
  number: z.string(),
  unit: z.string(),
  telephone: z.string().optional(),
  standing: standingView,
  due: date.optional(),
  /** How many days past due; negative: still to come. */
  daysPastDue: z.number().int().optional(),
  dose: z.string(),
  lastDose: date.optional(),
  bloodsBetween: z.object({ from: date, until: date }).optional(),
  window: z.string(),
  lastCall: z.string().optional(),
  /** What of the checklist is not asked yet, or needs somebody. */
  open: z.array(z.string()),
  /** Tries since the recall began, by route. */
  tried: z.string(),
  speakTo: z.array(z.string()),
  nextStep: z.string(),
  booked: date.optional(),
  clock: clockView.optional(),
});
export type RecallRow = z.infer<typeof recallRow>;
export const recallAnswer = z.object({
  people: z.array(recallRow),
  inReview: z.array(recallRow),
  firstInLine: z.array(recallRow),
});
