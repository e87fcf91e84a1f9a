/**
 * What is asked first when somebody rings after a dose, and what to do at once where the answer is yes: hours to years after an
 * infusion, from published product information and common practice (docs/safety/sources.md says which was read and which is from
 * memory). The local protocol and a prescriber decide; nothing here is a threshold that anything is computed from.
 */
import type { BodyOfKind } from '../kinds/index.ts';

export const redFlagNames = [
  'trouble breathing, swelling of face or tongue, collapse',
  'chest pain, palpitations, signs of a stroke',
  'tingling lips or fingers, cramps, fits',
  'fever past the third day, very high, or with shaking',
  'little urine, vomiting, cannot drink',
  'painful red eye, light hurts, blurred',
  'new thigh, hip or groin pain',
  'jaw pain, loose tooth, socket not healing, numb lip',
  'ear pain or discharge',
  'new back pain, or grown shorter',
  'severe pain in bones, joints or muscles',
] as const;
export type RedFlagName = (typeof redFlagNames)[number];
/** Asked, and the answer to each was no. */
export const noRedFlag = 'none of these' as const;

export type RedFlag = {
  /** At once: the emergency number first. Today: a prescriber hears of it on the day of the call. */
  readonly urgency: 'at once' | 'today';
  readonly thinkOf: string;
  /** What whoever holds the telephone does now. */
  readonly now: string;
  /** Written as a symptom too: it holds the next dose, or opens a review, until somebody has looked. */
  readonly symptom?: BodyOfKind<'symptom'>['what'];
  readonly source: 'read' | 'from memory';
};

export const redFlags: Readonly<Record<RedFlagName, RedFlag>> = {
  'trouble breathing, swelling of face or tongue, collapse': {
    urgency: 'at once',
    thinkOf: 'anaphylaxis, narrowed airways',
    now: 'They ring the emergency number now, or you do; stay on the line until help is there.',
    source: 'from memory',
  },
  'chest pain, palpitations, signs of a stroke': {
    urgency: 'at once',
    thinkOf: 'irregular heartbeat, heart attack, stroke',
    now: 'They ring the emergency number now, or you do; stay on the line until help is there.',
    source: 'from memory',
  },
  'tingling lips or fingers, cramps, fits': {
    urgency: 'today',
    thinkOf: 'low calcium, also weeks later',
    now: 'A calcium and an ECG today. With a fit, spasm or palpitations: the emergency number.',
    symptom: 'tingling or cramps',
    source: 'from memory',
  },
  'fever past the third day, very high, or with shaking': {
    urgency: 'today',
    thinkOf: 'infection, not the drip',
    now: 'Seen by a doctor today. Confused, breathless or mottled: the emergency number.',
    source: 'from memory',
  },
  'little urine, vomiting, cannot drink': {
    urgency: 'today',
    thinkOf: 'kidney injury',
    now: 'Creatinine, salts and fluids today; no anti-inflammatory tablets until seen.',
    source: 'from memory',
  },
  'painful red eye, light hurts, blurred': {
    urgency: 'today',
    thinkOf: 'inflammation inside the eye',
    now: 'Eye service today; no contact lens.',
    symptom: 'eye pain or redness',
    source: 'read',
  },
  'new thigh, hip or groin pain': {
    urgency: 'today',
    thinkOf: 'atypical fracture of the thigh bone',
    now: 'Little weight on it, no sport; both thighs are X-rayed. No further dose until it is looked at.',
    symptom: 'thigh, hip or groin pain',
    source: 'read',
  },
  'jaw pain, loose tooth, socket not healing, numb lip': {
    urgency: 'today',
    thinkOf: 'osteonecrosis of the jaw',
    now: 'Dentist, who is told of the medicine; no tooth is taken out before.',
    symptom: 'jaw pain',
    source: 'read',
  },
  'ear pain or discharge': {
    urgency: 'today',
    thinkOf: 'osteonecrosis of the ear canal',
    now: 'Referred to be looked at.',
    symptom: 'other',
    source: 'read',
  },
  'new back pain, or grown shorter': {
    urgency: 'today',
    thinkOf: 'a new fracture of the spine',
    now: 'Ask since when and after what; the course is reviewed before the next dose.',
    symptom: 'back pain',
    source: 'from memory',
  },
  'severe pain in bones, joints or muscles': {
    urgency: 'today',
    thinkOf: 'an effect of this group of medicines',
    now: 'Paracetamol as told; no further dose until it is looked at.',
    symptom: 'other',
    source: 'read',
  },
};

export type AskedFlag = RedFlagName | typeof noRedFlag;
export const flagsIn = (asked: readonly AskedFlag[]): readonly RedFlagName[] =>
  asked.filter((flag): flag is RedFlagName => flag !== noRedFlag);
