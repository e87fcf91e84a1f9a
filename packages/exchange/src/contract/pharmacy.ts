/** Prescriptions that wait for a pharmacist, that one has a question about, or that one has refused. */
import { z } from 'zod';
import { date, verdict } from './basics.ts';

/** Where the prescription that stands is with the pharmacist, for the screens of the person and of the visit. */
export const atPharmacy = z.object({
  is: z.enum(['waits', 'asked', 'answered', 'verified', 'refused']),
  /** "changed since it was verified on 3 Nov 2026: not verified" */
  says: z.string(),
  /** Nothing is prepared until this is settled. */
  holds: z.boolean(),
});

export const prescriptionToVerify = z.object({
  patient: z.string(),
  seq: z.number().int(),
  name: z.string(),
  number: z.string(),
  born: z.string(),
  allergies: z.string(),
  /** The entry of the prescription as it stands. */
  prescription: z.string(),
  /** In words: medicine, dose, validity, interval. */
  says: z.string(),
  orderedAs: z.string(),
  conditions: z.string().optional(),
  validFrom: date,
  validUntil: date,
  /** By whom and when it was last written. */
  by: z.string(),
  on: date,
  /** Whoever asks wrote it and so does not verify it. */
  own: z.boolean(),
  state: atPharmacy,
  since: date,
  /** The pharmacist's question, and what the prescriber answered. */
  question: z.object({ check: z.string(), says: z.string(), by: z.string(), on: date }).optional(),
  answer: z.object({ says: z.string(), by: z.string(), on: date }).optional(),
  place: z.object({ on: date, session: z.string() }).optional(),
  /** Readiness on the day of the place, else today. */
  verdict: verdict.optional(),
  headline: z.string().optional(),
});
export type PrescriptionToVerify = z.infer<typeof prescriptionToVerify>;

export const pharmacyView = z.object({
  unit: z.string(),
  unitName: z.string(),
  today: date,
  /** What the unit's protocol says; undefined: none is in force. */
  needed: z.boolean().optional(),
  /** Soonest place first. */
  prescriptions: z.array(prescriptionToVerify),
  /** Verified, with a place still to come. */
  verified: z.array(prescriptionToVerify),
});
export type PharmacyView = z.infer<typeof pharmacyView>;
