/**
 * Calendar dates tie all the time. Entries of one day are read in this order, whatever order they were written in; within a
 * kind by the moment said, then by sequence, so that the later of two weights of one day wins.
 */
import type { KindName } from '../kinds/index.ts';

/** Kinds not named here come in the middle, in order of sequence. */
const ranks: Partial<Record<KindName, number>> = {
  // Who it is comes before anything about them.
  identity: 0,
  'same-person': 0,
  contact: 1,
  'contact-person': 1,
  referral: 2,
  triage: 3,
  // What happened to the body comes before samples of that day are judged.
  illness: 10,
  surgery: 10,
  fracture: 10,
  'well-since': 11,
  // Measurements count before the decisions they inform.
  weight: 20,
  height: 20,
  result: 21,
  'results-signed': 22,
  // Decisions of a prescriber come before the dose they allow.
  prescription: 30,
  'prescriber-exception': 31,
  'prescriber-decision': 31,
  'course-review': 32,
  consent: 33,
  // A place is booked or given up before the visit of that day.
  'place-given-up': 40,
  'place-booked': 41,
  // The visit, in the order of its steps.
  arrived: 50,
  observations: 51,
  checklist: 52,
  'go-decision': 53,
  cannula: 54,
  flush: 55,
  preparation: 56,
  'second-check': 57,
  'infusion-started': 58,
  'dose-held': 59,
  'infusion-paused': 59,
  'infusion-resumed': 59,
  'site-check': 59,
  'infusion-finished': 60,
  dose: 61,
  'cannula-removed': 62,
  observed: 63,
  left: 64,
  'letter-drafted': 65,
  letter: 66,
  'letter-sent': 67,
  'letter-answered': 68,
  'message-begun': 68,
  'message-ended': 68,
  'own-page': 68,
  'page-sent': 68,
  'reminders-plan': 68,
  reaction: 69,
  aftercare: 69,
  'red-flag-passed-on': 70,
  'reaction-reported': 70,
  // An end comes after everything of its day.
  'transfer-out': 80,
  'transfer-acknowledged': 81,
  closed: 90,
  died: 99,
};
const MIDDLE = 45;

export const sameDayRank = (kind: KindName): number => ranks[kind] ?? MIDDLE;
