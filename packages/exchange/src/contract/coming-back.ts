/** Coming back for the next dose: what is asked of one person, how they were tried to be reached, whom we speak to. */
import { z } from 'zod';
import { date, standingView } from './basics.ts';

export const recallAnswerView = z.object({
  item: z.string(),
  state: z.enum(['answered', 'needs somebody', 'to ask']),
  says: z.string(),
});

/** What was felt after the last dose, for the talk about the next one. */
export const feltAfterView = z.array(
  z.object({
    entry: z.string(),
    on: date,
    says: z.string(),
    severity: z.enum(['mild', 'moderate', 'severe']),
    atTheChair: z.boolean(),
  }),
);

export const comingBackView = z.object({
  patient: z.string(),
  seq: z.number().int(),
  name: z.string(),
  born: z.string(),
  number: z.string(),
  telephone: z.string().optional(),
  address: z.string().optional(),
  today: date,
  standing: standingView,
  dose: z.string(),
  due: date.optional(),
  lastDose: date.optional(),
  /** The first day of the recall; undefined: nothing is due. */
  recallFrom: date.optional(),
  bloodsBetween: z.object({ from: date, until: date }).optional(),
  checklist: z.array(recallAnswerView),
  tried: z.string(),
  reached: z.boolean(),
  triedEnough: z.boolean(),
  felt: feltAfterView,
  dosesGiven: z.number().int(),
  speakTo: z.array(z.object({ entry: z.string(), says: z.string() })),
  /** When each kind of no is asked about again where no day is agreed; undefined: no protocol says. */
  askAgain: z.object({ thisDose: date, thisMedicine: date, allContact: date }).optional(),
  noCall: z.string().optional(),
});
export type ComingBackView = z.infer<typeof comingBackView>;
