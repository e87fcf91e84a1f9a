/** The patient pack: what is asked for, and what came of it. The document itself is served as HTML beside it. */
import { z } from 'zod';
import { date } from './basics.ts';

export const packPartNames = ['getting ready', 'the day', 'afterwards', 'next year'] as const;

const oneOf = packPartNames.join('|');
const partsPattern = new RegExp(`^(?:${oneOf})(?:,(?:${oneOf}))*$`);

export const patientPackQuery = z.object({
  /** Commas between; without it all four. */
  parts: z
    .string()
    .regex(partsPattern, `of ${packPartNames.join(', ')}, with commas between`)
    .optional(),
  /** One page in place of the parts. */
  easy: z.literal('yes').optional(),
  size: z.enum(['normal', 'large', 'very large']).default('normal'),
  /** Without it as the unit writes. */
  language: z.enum(['en-GB', 'en-US']).optional(),
  /** What the person said when asked about the liver, alcohol and being underfed; left out: nobody asked. */
  liver: z.enum(['fine', 'trouble']).optional(),
});
export type PatientPackAsked = z.infer<typeof patientPackQuery>;
export const partsAsked = (parts: string | undefined): readonly (typeof packPartNames)[number][] =>
  parts === undefined ? packPartNames : packPartNames.filter((name) => parts.split(',').includes(name));

export const patientPackView = z.object({
  patient: z.string(),
  seq: z.number().int(),
  name: z.string(),
  born: z.string(),
  number: z.string(),
  today: date,
  language: z.enum(['en-GB', 'en-US']),
  wording: z.string(),
  /** Which of the sheets asked for can be printed, as the entry names them. */
  parts: z.array(z.enum([...packPartNames, 'easy page'])),
  text: z.string(),
  leftOut: z.array(z.object({ part: z.string(), because: z.string() })),
  /** Why no amount of paracetamol stands on it. */
  noAmount: z.string().optional(),
});
export type PatientPackView = z.infer<typeof patientPackView>;
