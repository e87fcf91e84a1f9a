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
  /** Of the day of the place, else of today, with its numbers; absent: no protocol. */
  clearance: z.string().optional(),
  /** Taken now, by name. */
  medicines: z.array(z.string()),
  lastDose: z.string().optional(),
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

/** A direction under which named nurses record an order: who signed it, and whether it is in force today. */
export const groupDirectionRow = z.object({
  direction: z.string(),
  /** "Zoledronic acid at the day unit, version 2" */
  title: z.string(),
  regimen: z.string(),
  validFrom: date,
  validUntil: date,
  orderLastsDays: z.number().int(),
  conditions: z.array(z.string()),
  mayGive: z.array(z.string()),
  written: z.object({ by: z.string(), on: date }),
  signed: z.object({ by: z.string(), on: date }).optional(),
  /** Why it is not in force today; absent: it is. */
  notInForce: z.string().optional(),
  ended: z.boolean(),
  /** Whoever asks wrote it and so does not sign it. */
  own: z.boolean(),
});
export type GroupDirectionRow = z.infer<typeof groupDirectionRow>;

/** A direction in force that names whoever asks, for somebody who has no order. */
export const directionToUse = z.object({
  direction: z.string(),
  title: z.string(),
  regimen: z.string(),
  conditions: z.array(z.string()),
  orderLastsDays: z.number().int(),
});
export type DirectionToUse = z.infer<typeof directionToUse>;

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
  /** The newest first. */
  directions: z.array(groupDirectionRow),
  /** Who could be named in one, and for which regimens. */
  nurses: z.array(z.object({ staff: z.string(), name: z.string() })),
  regimens: z.array(z.object({ id: z.string(), title: z.string() })),
});
export type PharmacyView = z.infer<typeof pharmacyView>;
