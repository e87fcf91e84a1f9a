/** People: the list, one person, their entries. */
import { z } from 'zod';
import { date, clockView, moment, placeView, standingView, verdict, windowView } from './basics.ts';
import { atPharmacy, directionToUse } from './pharmacy.ts';
import { supportLine } from './supports.ts';
import { readinessView } from './readiness.ts';

export const personRow = z.object({
  patient: z.string(),
  name: z.string(),
  number: z.string(),
  born: z.string(),
  age: z.number().int().optional(),
  unit: z.string(),
  standing: standingView,
  verdict,
  headline: z.string(),
  window: windowView.pick({ first: true, last: true, certain: true, says: true }).optional(),
  place: placeView.optional(),
  dose: z.string(),
  firstTimer: z.boolean(),
  due: date.optional(),
});
export type PersonRow = z.infer<typeof personRow>;

export const peopleQuery = z.object({
  unit: z.string().optional(),
  standing: z.string().optional(),
  limit: z.coerce.number().int().min(1).max(2000).optional(),
});
export const peopleAnswer = z.object({
  people: z.array(personRow),
  total: z.number().int(),
  /** How many stand where, over the whole register (of the unit). */
  standings: z.array(z.object({ standing: z.string(), count: z.number().int() })),
  unaccounted: z.number().int(),
});

/** Search from anywhere: name, former name, number or birth date. A POST, so that no name stands in an address or a log. */
export const searchBody = z.object({ text: z.string().min(1).max(100) });
export const searchAnswer = z.object({
  found: z.array(
    z.object({
      patient: z.string(),
      name: z.string(),
      number: z.string(),
      born: z.string(),
      unit: z.string(),
      standing: z.string(),
      matched: z.string(),
    }),
  ),
});

export const entryView = z.object({
  id: z.string(),
  seq: z.number().int(),
  kind: z.string(),
  label: z.string(),
  on: date,
  at: moment.optional(),
  recordedAt: moment,
  by: z.object({ name: z.string(), role: z.string() }),
  text: z.string(),
  body: z.unknown(),
  amends: z.string().optional(),
  amendedBy: z.string().optional(),
  withdrawnBy: z.string().optional(),
  withdrawnBecause: z.string().optional(),
  /** The number of the other notes of this person in which it stands. */
  from: z.string().optional(),
  /** Written long after it was true. */
  late: z.boolean(),
});
export type EntryView = z.infer<typeof entryView>;

export const courseView = z.object({
  regimen: z.string().optional(),
  doses: z.array(
    z.object({
      entry: z.string(),
      number: z.number().int(),
      on: date,
      medicine: z.string(),
      setting: z.string(),
      batch: z.string().optional(),
      part: z.boolean(),
      counts: z.boolean(),
    }),
  ),
  planned: z.number().int(),
  thisCourse: z.number().int(),
  lifetime: z.number().int(),
  /** Other bone medicines ever given: "denosumab 60 mg: 3 doses". */
  also: z.array(z.string()),
  nextDose: z.string(),
  firstTimer: z.boolean(),
  due: date.optional(),
  recallFrom: date.optional(),
  bloodsBetween: z.object({ from: date, until: date }).optional(),
  inReview: z.string().optional(),
  /** For the course strip. */
  marks: z.array(
    z.object({
      kind: z.enum(['fracture', 'tablets', 'reaction', 'review', 'break', 'denosumab']),
      from: date,
      until: date.optional(),
      says: z.string(),
      more: z.string().optional(),
    }),
  ),
});
export type CourseView = z.infer<typeof courseView>;

/** Body, kidneys and bone at a glance: each figure with what it rests on, its sum and its source. */
export const readingPartView = z.object({
  title: z.enum(['Body', 'Bone', 'Kidneys', 'Observations']),
  lines: z.array(
    z.object({
      what: z.string(),
      is: z.string(),
      of: z.string(),
      put: z.string().optional(),
      source: z.string().optional(),
      entries: z.array(z.string()),
    }),
  ),
  cautions: z.array(z.string()),
});
export type ReadingPartView = z.infer<typeof readingPartView>;

/** Someone who could be mistaken for this person, and whether it is still open whether the two are one. */
export const alikeView = z.object({
  patient: z.string(),
  name: z.string(),
  number: z.string(),
  says: z.string(),
  answer: z.enum(['nothing said', 'may be one', 'proposed', 'two']),
  /** Who gave that answer, when, and why. */
  answered: z.object({ by: z.string(), staff: z.string(), on: date, reason: z.string() }).optional(),
  /** Proposed: the notes that would be kept, and what the first of two people found to agree. */
  kept: z.string().optional(),
  agree: z.array(z.string()).optional(),
  /** Where the other person stands, and how many doses their notes tell of. */
  standing: z.string(),
  doses: z.number().int(),
  /** What these notes and the other ones say, side by side. */
  compared: z.array(
    z.object({
      identifier: z.string(),
      these: z.string().optional(),
      other: z.string().optional(),
      says: z.enum(['the same', 'differs', 'not recorded in both']),
    }),
  ),
});
export const togetherView = z.object({
  patient: z.string(),
  name: z.string(),
  number: z.string(),
  since: date,
  by: z.string(),
  agree: z.array(z.string()),
  reason: z.string(),
});

export const personView = z.object({
  patient: z.string(),
  seq: z.number().int(),
  name: z.string(),
  family: z.string(),
  given: z.string(),
  formerNames: z.array(z.string()),
  born: z.string(),
  bornInWords: z.string(),
  age: z.number().int().optional(),
  sex: z.string().optional(),
  number: z.string(),
  unit: z.string(),
  allergies: z.string(),
  armToAvoid: z.string().optional(),
  armToAvoidBecause: z.string().optional(),
  needs: z.array(z.string()),
  telephone: z.string().optional(),
  address: z.string().optional(),
  familyDoctor: z.string().optional(),
  standing: standingView,
  readiness: readinessView.optional(),
  /** Why there is no readiness: no protocol in force at the unit. */
  noReadiness: z.string().optional(),
  place: placeView.optional(),
  /** What goes with the place, and what a place they no longer have left behind. */
  supports: z.array(supportLine),
  course: courseView.optional(),
  /** Absent without a protocol in force. */
  reading: z.array(readingPartView).optional(),
  clock: clockView.optional(),
  /** Absent: no pharmacist has a word in it. */
  atPharmacy: atPharmacy.optional(),
  /** No order stands, and these name whoever asks. */
  directions: z.array(directionToUse),
  visitOpen: z.boolean(),
  /** Who may have made the second check of a dose at home: everybody else who may make one. */
  checkers: z.array(z.object({ staff: z.string(), name: z.string() })),
  unsigned: z.array(z.object({ entry: z.string(), text: z.string(), on: date })),
  lookAlikes: z.array(alikeView),
  /** Other notes of this person that are read in these. */
  together: z.array(togetherView),
  problems: z.array(z.string()),
  entries: z.array(entryView),
});
export type PersonView = z.infer<typeof personView>;
