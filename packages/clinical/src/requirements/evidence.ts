/**
 * What the requirements read: the deciding facts of a record on a day. It holds facts and no thresholds, so that the same
 * evidence can be judged by several protocol versions, and a plan's outcome can be put into it (`after-plan`).
 * Rules: docs/readiness.md R1-R9.
 */
import type { Day } from '../calendar/day.ts';
import type { PartialDate } from '../calendar/partial-date.ts';
import type { CourseFacts } from '../course/course-facts.ts';
import type { DosesGiven } from '../course/doses.ts';
import type { Quantity } from '../exact/quantity.ts';
import type { Ratio } from '../exact/ratio.ts';
import type { Sex } from '../formulas/creatinine-clearance.ts';
import type { BodyOfKind } from '../kinds/index.ts';
import type { Uuid } from '../ledger/entry.ts';
import type { BoneMedicine } from '../protocol/medicines.ts';
import type { Fact, SubjectRecord } from '../record/patient-record.ts';
import type { ReactionToDecide } from '../record/reaction-to-decide.ts';
import type { CalciumSample } from './deciding-sample.ts';
import type { Exceptions } from './exceptions.ts';
import type { Loading } from './loading.ts';
import { pickEvidence } from './pick-evidence.ts';

/** A laboratory value that decides. A repeat that a plan assumes has no entry; where no value is known it is called good. */
export type Sample = {
  readonly on: Day;
  readonly value: Quantity | 'assumed good' | 'assumed low';
  readonly signed: boolean;
  /** Taken during an acute admission. */
  readonly acute: boolean;
  /** Another value of the same test and day says otherwise, and neither was corrected or withdrawn. */
  readonly contradicted: boolean;
  readonly entry: Uuid | undefined;
  readonly limits: { readonly low: string; readonly high: string } | undefined;
};

export type Weighed = {
  readonly on: Day;
  readonly value: Quantity | 'assumed good';
  readonly method: BodyOfKind<'weight'>['method'];
  readonly caution: string | undefined;
  readonly entry: Uuid | undefined;
  /** A prescriber settled that the actual weight decides for this one; a later weight needs a decision of its own. */
  readonly actualDecides: boolean;
  /** The weight before it, not estimated: what a change is told by (R2b). A weight that a plan assumes is the last one, unchanged. */
  readonly before: { readonly on: Day; readonly value: Quantity; readonly entry: Uuid } | undefined;
  readonly changeLookedInto: boolean;
};

/** What was said or seen of teeth and jaw. Undefined entry: an answer a plan assumes. */
export type DentalAnswer = {
  readonly answer: BodyOfKind<'dental'>['answer'];
  readonly on: Day;
  readonly checkedOn: Day | undefined;
  readonly entry: Uuid | undefined;
};

export type MineralResult = {
  readonly result: Fact<'result'>;
  readonly signed: boolean;
  readonly lookedInto: boolean;
};

export type HipFracture = {
  readonly fracture: Fact<'fracture'>;
  /** A prescriber looked into it: how it was treated is settled. */
  readonly lookedInto: boolean;
};

export type Evidence = {
  readonly today: Day;
  readonly identity: Fact<'identity'> | undefined;
  /** The newest answer that leaves it open whether other notes are about the same person. */
  readonly mayBeTwice: Fact<'same-person'> | undefined;
  readonly born: PartialDate | undefined;
  readonly sex: Sex | undefined;
  readonly allergies: readonly Fact<'allergy'>[];
  readonly reactionsToDecide: readonly ReactionToDecide[];
  readonly pregnancy:
    | { readonly answer: BodyOfKind<'pregnancy'>['answer']; readonly on: Day; readonly entry: Uuid | undefined }
    | undefined;
  /** Asked by a plan: nobody has answered yet. */
  readonly allergiesAssumed: boolean;
  readonly illnesses: readonly Fact<'illness'>[];
  /** Every one, cleared or not: what of it tells of an illness is the protocol's to say. */
  readonly checklists: readonly Fact<'checklist'>[];
  /** The newest "well since". */
  readonly wellSince: { readonly on: Day; readonly seq: number } | undefined;
  readonly operations: readonly Fact<'surgery'>[];
  readonly hipFractures: readonly HipFracture[];
  /** Of the thigh shaft or of another site, about which no prescriber has decided that it is not atypical. */
  readonly undecidedFractures: readonly Fact<'fracture'>[];
  readonly creatinine: Sample | undefined;
  /** Not acute, signed or not, plain numbers above nought, oldest first: what a baseline is looked for in. */
  readonly baselineCreatinines: readonly { readonly on: Day; readonly umol: Ratio }[];
  /** A prescriber accepted the rise of the deciding creatinine. It is about that one: a repeat does not carry it. */
  readonly riseAccepted: boolean;
  /** A prescriber decided that the medicine is given at the clearance of the deciding creatinine, where the regimen lets one. */
  readonly lowClearanceAccepted: boolean;
  readonly calcium: CalciumSample | undefined;
  readonly vitaminD: Sample | undefined;
  readonly weight: Weighed | undefined;
  /** Taken as settled that the actual weight decides, whichever it is. */
  readonly actualDecidesAssumed: boolean;
  readonly height: Fact<'height'> | undefined;
  /** The newest. */
  readonly loading: Loading | undefined;
  /** Every loading that was finished, oldest first. */
  readonly finishedLoadings: readonly Loading[];
  readonly maintenance: { readonly taken: boolean; readonly on: Day; readonly entry: Uuid | undefined } | undefined;
  /** Of every medicine; which of them count is the regimen's to say. */
  readonly doses: DosesGiven;
  /** The latest dose of each medicine, whole or part, and whether a prescriber agreed to what follows it. */
  readonly lastGiven: ReadonlyMap<BoneMedicine, { readonly dose: Fact<'dose'>; readonly agreed: boolean }>;
  /** Of the 4 mg product, without a decision that lets it pass. */
  readonly otherProductDoses: readonly Fact<'dose'>[];
  readonly anyZoledronicDose: boolean;
  /** Reviews, and what may open one. */
  readonly course: CourseFacts;
  /** A plan assumes a review that says carry on. */
  readonly carryOnAssumed: boolean;
  /** The order that stands: the newest. */
  readonly prescription: Fact<'prescription'> | undefined;
  readonly prescriptions: readonly Fact<'prescription'>[];
  /** A plan assumes one valid from a day for a year. */
  readonly prescriptionAssumed: { readonly from: Day; readonly until: Day } | undefined;
  /** Symptoms that nobody has cleared, and every checklist. What of a checklist holds a dose is the protocol's to say. */
  readonly told: readonly (Fact<'symptom'> | Fact<'checklist'>)[];
  /** Whether a practitioner has cleared this one answer. Each answer of a checklist is cleared by itself. */
  readonly isAnswerCleared: (checklist: Uuid, question: string) => boolean;
  /** Bone tablets and other bone medicines, by name: the newest entry of each. */
  readonly boneMedicines: readonly Fact<'medicine'>[];
  /** A plan assumes that these are stopped, and that what a prescriber must agree to is agreed, on that day. */
  readonly boneMedicinesStopped: Day | undefined;
  /** The newest signed result of each mineral test and the newest of all, and whether a prescriber has looked into it. */
  readonly minerals: readonly MineralResult[];
  /** What is known to bear on minerals, unless a prescriber has looked into it. */
  readonly conditions: readonly Fact<'condition'>[];
  /** A plan assumes that a prescriber has looked into all of them. */
  readonly mineralsLookedInto: boolean;
  /** Oldest first. */
  readonly dental: readonly DentalAnswer[];
  /** The newest word on whether other causes were looked for. */
  readonly secondaryCauses:
    | { readonly answer: BodyOfKind<'secondary-causes'>['answer']; readonly on: Day; readonly entry: Uuid | undefined }
    | undefined;
  /** Of any medicine: a best-interest decision is for one. */
  readonly lastDose: Fact<'dose'> | undefined;
  readonly consent:
    | { readonly decision: BodyOfKind<'consent'>['decision']; readonly on: Day; readonly entry: Uuid | undefined }
    | undefined;
  /** The newest no of the person, to this dose, the medicine or all contact, where no consent was written after it. */
  readonly saidNo: Fact<'refusal'> | undefined;
  /** The newest finding on whether they can decide this, where it says they cannot. */
  readonly cannotDecide: Fact<'capacity'> | undefined;
  readonly exceptions: Exceptions;
  /** Medicines hard on the kidneys, to be mentioned beside the clearance. */
  readonly nephrotoxic: readonly Fact<'medicine'>[];
  readonly medicines: readonly Fact<'medicine'>[];
  readonly calciumLowering: readonly Fact<'medicine'>[];
};

/**
 * The deciding facts of a record, as far as they are dated on or before `today`. A screen asks about the same notes several times
 * (verdict, window, what follows a dose): they are picked for the first question and kept with the record for the others.
 */
export function evidenceOf(record: SubjectRecord, today: Day): Evidence {
  const { kept } = record;
  const before = kept.of === record.all ? kept.evidence : undefined;
  if (before?.today === today) return before;
  kept.of = record.all;
  return (kept.evidence = pickEvidence(record, today));
}
