/**
 * What a person can ask the service to do. One act may write several entries to several ledgers; `decide` turns it into
 * drafts, or into refusals by name. The same acts come from the screen, the command line, an import and the demo.
 */
import { z } from 'zod';
import { dateField, identifiersField, shortText, textField, timeField, uuidField } from '../kinds/fields.ts';
import { batchCounted } from '../kinds/batch-counted.ts';
import { batchReceived } from '../kinds/batch-received.ts';
import { batchTakenOut } from '../kinds/batch-taken-out.ts';
import { batchReleased } from '../kinds/batch-released.ts';
import { batchStopped } from '../kinds/batch-stopped.ts';
import { formulary } from '../kinds/formulary.ts';
import { groupDirection } from '../kinds/group-direction.ts';
import { groupDirectionEnded } from '../kinds/group-direction-ended.ts';
import { groupDirectionSigned } from '../kinds/group-direction-signed.ts';
import { packsOrdered } from '../kinds/packs-ordered.ts';
import { packsOrderClosed } from '../kinds/packs-order-closed.ts';
import { adviceCall } from '../kinds/advice-call.ts';
import { unknownCall } from '../kinds/unknown-call.ts';
import { unknownCallSettled } from '../kinds/unknown-call-settled.ts';
import { contact } from '../kinds/contact.ts';
import { identity } from '../kinds/identity.ts';
import { kindNames } from '../kinds/index.ts';
import { referral } from '../kinds/referral.ts';
import { comparedBy } from '../kinds/same-person.ts';
import { secondCheck } from '../kinds/second-check.ts';
import { competence } from '../kinds/competence.ts';
import { sessionClosed } from '../kinds/session-closed.ts';
import { sessionOpened } from '../kinds/session-opened.ts';
import { sessionPlanned } from '../kinds/session-planned.ts';
import { unitSettings } from '../kinds/unit-settings.ts';
import { everyInjectionSite } from '../kinds/products.ts';
import { goDecision } from '../kinds/go-decision.ts';
import { infusionFinished } from '../kinds/infusion-finished.ts';
import { infusionStarted } from '../kinds/infusion-started.ts';
import { infusionPaused } from '../kinds/infusion-paused.ts';
import { infusionResumed } from '../kinds/infusion-resumed.ts';
import { rowSettled } from '../kinds/row-settled.ts';
import { rowWaiting } from '../kinds/row-waiting.ts';
import { importRun } from '../kinds/import-run.ts';
import { protocolSchema } from '../protocol/protocol.ts';

const localMoment = z
  .string()
  .regex(
    /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d{1,3})?)?([+-]\d{2}:\d{2}|Z)$/,
    'a moment with its offset from UTC',
  );
/** When it was true: a date, or a local moment with its offset. */
const effectiveAt = z.union([dateField, localMoment]);
/** A step typed in later: when it happened. Absent: now. */
const happenedAt = localMoment.optional();

const line = z.object({ kind: z.enum(kindNames), body: z.unknown(), effectiveAt }).readonly();

/** Causes of trouble the person booking has seen on screen and accepts, with the reason. */
const accepted = z.object({ causes: z.array(shortText).min(1).readonly(), reason: textField }).readonly();

const compared = z.array(z.enum(comparedBy)).min(1, 'say what was compared').max(comparedBy.length).readonly();

/** What was asked about and is right as typed: the sentences that were shown. */
const confirmed = z.array(textField).max(40).readonly();

export const actSchema = z.discriminatedUnion('name', [
  /** A new person: identity, contact, referral. */
  z.object({
    name: z.literal('register'),
    patient: uuidField,
    identity: identity.body,
    contact: contact.body.optional(),
    referral: referral.body,
    on: dateField,
    notTheSameAs: z.array(uuidField).readonly().optional(),
  }),
  /** One entry of a kind that is written by hand, new or correcting another. */
  z.object({
    name: z.literal('record'),
    patient: uuidField,
    line,
    amends: uuidField.optional(),
    confirms: confirmed.optional(),
  }),
  /** Several entries of one moment that belong together (results of one sample, weight and observations). */
  z.object({
    name: z.literal('record together'),
    patient: uuidField,
    lines: z.array(line).min(1).max(40).readonly(),
    confirms: confirmed.optional(),
  }),
  z.object({
    name: z.literal('withdraw'),
    patient: uuidField,
    entry: uuidField,
    reason: textField,
    confirms: confirmed.optional(),
  }),

  /** An entry written in the wrong person's notes: withdrawn there and written here, by one act. */
  z.object({ name: z.literal('move entry'), patient: uuidField, entry: uuidField, to: uuidField, reason: textField }),

  /** One person with two notes: said by two people, taken back with a reason. `patient` are the notes that are kept. */
  z.object({ name: z.literal('may be one'), patient: uuidField, other: uuidField, reason: textField }),
  z.object({
    name: z.literal('say one person'),
    patient: uuidField,
    other: uuidField,
    agree: compared,
    reason: textField,
  }),
  z.object({
    name: z.literal('confirm one person'),
    patient: uuidField,
    other: uuidField,
    agree: compared,
    reason: textField,
  }),
  z.object({
    name: z.literal('say two people'),
    patient: uuidField,
    other: uuidField,
    differ: compared,
    reason: textField,
  }),
  z.object({ name: z.literal('read apart'), patient: uuidField, other: uuidField, reason: textField }),

  z.object({ name: z.literal('plan session'), session: uuidField, body: sessionPlanned.body }),
  z.object({ name: z.literal('cancel session'), session: uuidField, reason: textField }),
  z.object({
    name: z.literal('book'),
    patient: uuidField,
    session: uuidField,
    place: z.number().int().min(1),
    accepts: accepted.optional(),
    happenedAt,
  }),
  z.object({
    name: z.literal('move'),
    patient: uuidField,
    from: uuidField,
    to: uuidField,
    place: z.number().int().min(1),
    reason: textField,
    askedBy: z.enum(['the patient', 'the unit']),
    accepts: accepted.optional(),
  }),
  z.object({
    name: z.literal('give up place'),
    patient: uuidField,
    session: uuidField,
    reason: textField,
    askedBy: z.enum(['the patient', 'the unit']),
  }),

  /** The advice line: about somebody known, about somebody not found here, and a call that finds its person. */
  z.object({ name: z.literal('write advice call'), patient: uuidField, body: adviceCall.body, happenedAt }),
  z.object({ name: z.literal('write unknown call'), unit: uuidField, body: unknownCall.body, happenedAt }),
  z.object({ name: z.literal('settle unknown call'), unit: uuidField, body: unknownCallSettled.body }),
  /** People of one list told another time of that day, by whoever told them. */
  z.object({
    name: z.literal('tell times'),
    session: uuidField,
    times: z
      .array(z.object({ patient: uuidField, arriveAt: timeField }).readonly())
      .min(1, 'say who was told')
      .max(200)
      .readonly(),
    reason: textField,
  }),

  /** The visit. Steps whose body needs the server's clock or a computed comparison have an act of their own. */
  z.object({
    name: z.literal('decide'),
    patient: uuidField,
    decision: z.enum(['go', 'put off', 'ask a prescriber']),
    ...goDecision.body.unwrap().pick({
      reasonCode: true,
      note: true,
      couldHaveBeenSeen: true,
      nextStep: true,
      nextBy: true,
      nextOwner: true,
      tellsThePatient: true,
    }).shape,
    happenedAt,
  }),
  z.object({
    name: z.literal('second check'),
    patient: uuidField,
    preparation: uuidField,
    reading: secondCheck.body
      .unwrap()
      .omit({ preparation: true, agrees: true, differs: true, signedOnPaperBy: true, clock: true }),
    /** From the day sheet: whose signature stands on the paper. Only for a check that is typed in later. */
    signedOnPaperBy: secondCheck.body.unwrap().shape.signedOnPaperBy,
    happenedAt,
  }),
  z.object({
    name: z.literal('start infusion'),
    patient: uuidField,
    plannedMinutes: infusionStarted.body.unwrap().shape.plannedMinutes,
    ...infusionStarted.body.unwrap().pick({ identifiers: true, alongTheLine: true, packAgain: true }).shape,
    happenedAt,
  }),
  z.object({
    name: z.literal('give injection'),
    patient: uuidField,
    injectedInto: z.enum(everyInjectionSite),
    injections: z.number().int().min(1).max(4),
    identifiers: identifiersField,
    happenedAt,
  }),
  z.object({
    name: z.literal('pause infusion'),
    patient: uuidField,
    ...infusionPaused.body.unwrap().pick({ reason: true, because: true }).shape,
  }),
  z.object({
    name: z.literal('resume infusion'),
    patient: uuidField,
    ...infusionResumed.body.unwrap().pick({ alongTheLine: true }).shape,
  }),
  z.object({
    name: z.literal('finish infusion'),
    patient: uuidField,
    milliliters: z.number().min(0).max(100),
    stoppedBecause: textField.optional(),
    ...infusionFinished.body.unwrap().pick({ timedBy: true, pausedMinutes: true }).shape,
    incident: textField.optional(),
    happenedAt,
  }),

  /** The day of a session. */
  z.object({ name: z.literal('record competence'), unit: uuidField, body: competence.body }),
  z.object({
    name: z.literal('open session'),
    session: uuidField,
    unit: uuidField,
    body: sessionOpened.body,
    /** Written anew with too few people or half a kit: that it is so. */
    confirms: confirmed.optional(),
  }),
  z.object({ name: z.literal('close session'), session: uuidField, body: sessionClosed.body }),
  /** Who looks after whom; the nurse is one the opening names as here. */
  z.object({
    name: z.literal('name nurse'),
    session: uuidField,
    patients: z.array(uuidField).min(1).max(200).readonly(),
    nurse: shortText,
  }),
  z.object({ name: z.literal('accept handover'), session: uuidField, note: textField.optional() }),

  z.object({ name: z.literal('set unit'), unit: uuidField, body: unitSettings.body }),
  /** Which packs the unit keeps and scans. */
  z.object({ name: z.literal('set formulary'), unit: uuidField, body: formulary.body }),
  /** A prescriber writes it, a pharmacist signs that very text; then the nurses it names record orders under it. */
  z.object({ name: z.literal('write direction'), unit: uuidField, body: groupDirection.body }),
  z.object({ name: z.literal('sign direction'), unit: uuidField, body: groupDirectionSigned.body }),
  z.object({ name: z.literal('end direction'), unit: uuidField, body: groupDirectionEnded.body }),
  z.object({
    name: z.literal('order under direction'),
    patient: uuidField,
    direction: uuidField,
    /** Each condition of the direction, as it stands there. */
    answers: z
      .array(z.object({ condition: textField, answer: z.enum(['yes', 'no', 'not known']) }).readonly())
      .max(30)
      .readonly(),
  }),
  /** Packs on the shelf: come in, counted, gone without being given. */
  z.object({ name: z.literal('receive packs'), body: batchReceived.body, confirms: confirmed.optional() }),
  z.object({
    name: z.literal('withdraw receipt'),
    unit: uuidField,
    batch: shortText,
    entry: uuidField,
    reason: textField,
  }),
  z.object({ name: z.literal('count packs'), body: batchCounted.body }),
  z.object({ name: z.literal('take out packs'), body: batchTakenOut.body }),
  z.object({ name: z.literal('order packs'), unit: uuidField, body: packsOrdered.body }),
  z.object({ name: z.literal('close order'), unit: uuidField, body: packsOrderClosed.body }),
  /** No pack of the batch is used; until a pharmacist lets it be used again. */
  z.object({ name: z.literal('stop batch'), body: batchStopped.body, confirms: confirmed.optional() }),
  z.object({ name: z.literal('release batch'), body: batchReleased.body }),
  /** The hash is the server's: SHA-256 over the canonical text of the sheet. */
  z.object({ name: z.literal('write protocol'), unit: uuidField, sheet: protocolSchema, contentHash: shortText }),
  z.object({
    name: z.literal('sign protocol'),
    unit: uuidField,
    version: shortText,
    contentHash: shortText,
    as: z.enum(['clinician', 'pharmacist']),
    inForceFrom: dateField,
  }),

  /** One row of a register: a new person or more facts of a known one. Written as a whole or not at all. */
  z.object({
    name: z.literal('take in'),
    patient: uuidField,
    isNew: z.boolean(),
    lines: z.array(line).min(1).max(60).readonly(),
  }),
  z.object({
    name: z.literal('note import'),
    register: uuidField,
    run: importRun.body,
    waiting: z.array(rowWaiting.body).readonly(),
  }),
  z.object({ name: z.literal('settle row'), register: uuidField, body: rowSettled.body }),
]);
export type Act = z.infer<typeof actSchema>;
export type ActName = Act['name'];
export type ActNamed<Name extends ActName> = Extract<Act, { name: Name }>;

/** Place numbers and times that web forms use too. */
export const arrivalTime = timeField;
