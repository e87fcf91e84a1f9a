/** What the sheet for deciding together is made from: facts of the person, the risk copied from an instrument, the talks so far. */
import { z } from 'zod';
import { date } from './basics.ts';
import { feltAfterView } from './coming-back.ts';

const told = z.object({ entry: z.string(), on: date, text: z.string(), by: z.string() });

export const decidingView = z.object({
  patient: z.string(),
  seq: z.number().int(),
  name: z.string(),
  born: z.string(),
  number: z.string(),
  standing: z.string(),
  unit: z.object({ name: z.string(), telephone: z.string(), demo: z.boolean() }),
  today: date,
  protocolVersion: z.string().optional(),
  person: z.object({
    sex: z.enum(['female', 'male']).optional(),
    ageYears: z.number().int().optional(),
    newestFracture: date.optional(),
    hip: z.object({ on: date, repaired: z.boolean() }).optional(),
    onSteroid: z.boolean(),
    hadBoneTablets: z.boolean(),
    dosesGiven: z.number().int(),
    dosesInARow: z.number().int(),
    firstDoseSinceHip: date.optional(),
  }),
  risks: z.array(
    z.object({
      entry: z.string(),
      of: z.enum(['hip fracture', 'major fracture', 'any fracture']),
      percent: z.number(),
      years: z.number().int(),
      instrument: z.string(),
      workedOutOn: date,
      lowPercent: z.number().optional(),
      highPercent: z.number().optional(),
      veryFrail: z.boolean(),
    }),
  ),
  /** After the last dose. */
  felt: feltAfterView,
  /** The newest first. */
  talks: z.array(told.extend({ matters: z.string().optional() })),
  capacity: told.optional(),
  consent: told.optional(),
  cautions: z.array(z.string()),
});
export type DecidingView = z.infer<typeof decidingView>;
