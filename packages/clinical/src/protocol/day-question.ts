/** A question only the day can settle, as the rule sheet words and weighs it. */
import { z } from 'zod';
import { shortText, textField } from '../kinds/fields.ts';
import { illnessSorts } from '../kinds/illness.ts';

export const dayQuestionSchema = z
  .object({
    id: shortText,
    asks: textField,
    /** The answer that holds the dose. */
    holdsOn: z.enum(['yes', 'no']),
    /** What a holding answer means for the verdict: put off, or ask a prescriber. */
    then: z.enum(['not ready', 'cannot say']),
    says: textField,
    /** A holding answer of an earlier day still holds until someone clears it: pain is not over because it is not mentioned. */
    staysUntilCleared: z.boolean().optional(),
    /** The prescriber's exception that passes over a holding answer while it lasts. */
    exception: z.enum(['teeth and jaw']).optional(),
    /**
     * A holding answer is an event of this sort from the day of the checklist on: earlier bloods no longer count, and it holds
     * every later date until "well since" is recorded (docs/readiness.md R1).
     */
    event: z.enum(illnessSorts).optional(),
  })
  .readonly();
export type DayQuestion = z.infer<typeof dayQuestionSchema>;
