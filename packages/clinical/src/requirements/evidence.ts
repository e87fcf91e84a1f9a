/**
 * What the requirements read: the deciding facts of a record on a day, picked once. It holds facts and no thresholds, so that
 * the same evidence can be judged by several protocol versions, and a plan's outcome can be put into it (`after-plan`).
 * Rules: docs/readiness.md R1-R9. Facts dated after `today` are left out here and nowhere else.
 */
import { type Day, day } from '../calendar/day.ts';
import { type PartialDate, parsePartialDate } from '../calendar/partial-date.ts';
import { type CourseFacts, courseFactsOf } from '../course/course-facts.ts';
import { type DosesGiven, dosesGiven } from '../course/doses.ts';
import type { Analyte, Quantity } from '../exact/quantity.ts';
import type { Sex } from '../formulas/creatinine-clearance.ts';
import type { BodyOfKind, KindName } from '../kinds/index.ts';
import type { Uuid } from '../ledger/entry.ts';
import type { BoneMedicine } from '../protocol/medicines.ts';
import { noAfterConsent } from '../record/no-after-consent.ts';
import { type Fact, type SubjectRecord, factsOf, upTo } from '../record/patient-record.ts';
import { leftOpen } from '../record/same-person.ts';
import { type Exceptions, exceptionsOf } from './exceptions.ts';
import { type Loading, loadingsBy } from './loading.ts';
import { decidingMinerals, isMineralTest } from './deciding-minerals.ts';
import { calciumFrom, isSameValue, sampleFrom } from './deciding-sample.ts';
import { boneMedicinesIn } from './bone-medicines-in.ts';

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

/** The deciding calcium: the laboratory's adjusted value of the newest sample date, else its total with the albumin of that date. */
export type CalciumSample = {
  readonly on: Day;
  readonly sort: 'adjusted' | 'total';
  readonly sample: Sample;
  readonly albumin: Sample | undefined;
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
  /** Severe, about which no prescriber has decided. */
  readonly severeReactions: readonly Fact<'reaction'>[];
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
  /** Not acute, signed or not, oldest first: what a baseline is looked for in. */
  readonly baselineCreatinines: readonly { readonly on: Day; readonly value: Quantity; readonly entry: Uuid }[];
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

const last = <T>(list: readonly T[]): T | undefined => (list.length === 0 ? undefined : list[list.length - 1]);

const none: readonly never[] = [];
const nothingCleared = (): boolean => false;

/**
 * The deciding facts of a record, as far as they are dated on or before `today`. Most people have nothing of most kinds, and
 * this is asked of thousands: where there is nothing, nothing is made.
 */
export function evidenceOf(whole: SubjectRecord, today: Day): Evidence {
  const record = upTo(whole, today);
  const upToToday = <Kind extends KindName>(kind: Kind): readonly Fact<Kind>[] => factsOf(record, kind);

  const signings = upToToday('results-signed');
  // Asked of the few results that decide, mostly the newest, which the newest signing names.
  const isSigned = ({ id }: Fact<'result'>): boolean =>
    signings.findLast(({ body }) => body.results.includes(id)) !== undefined;
  const newest = new Map<Analyte, Fact<'result'>>();
  const baselines: Evidence['baselineCreatinines'][number][] = [];
  const albumins: Fact<'result'>[] = [];
  const contradicted: Uuid[] = [];
  let newestSigned: Map<Analyte, Fact<'result'>> | undefined;
  for (const result of upToToday('result')) {
    const { analyte } = result.body;
    const before = newest.get(analyte);
    if (before?.on === result.on && (contradicted.includes(before.id) || !isSameValue(before, result)))
      contradicted.push(result.id);
    newest.set(analyte, result);
    if (analyte === 'creatinine') {
      const { on, body, id } = result;
      if (body.acuteAdmission !== true) baselines.push({ on, value: body.quantity, entry: id });
    } else if (analyte === 'albumin') albumins.push(result);
    else if (isMineralTest(analyte) && isSigned(result)) (newestSigned ??= new Map()).set(analyte, result);
  }
  const decisions = upToToday('prescriber-decision');
  const decided = (about: Fact | undefined, question: BodyOfKind<'prescriber-decision'>['question']): boolean =>
    about !== undefined && decisions.some(({ body }) => body.question === question && body.about === about.id);

  const minerals = decidingMinerals(newestSigned, newest, (result) => ({
    result,
    signed: isSigned(result),
    lookedInto: decided(result, 'mineral metabolism looked into'),
  }));
  const creatinine = newest.get('creatinine');
  const vitaminD = newest.get('vitamin D');
  const weights = upToToday('weight');
  const weighed = last(weights);
  const weighedBefore = weights.findLast((one) => one !== weighed && one.body.method !== 'estimated');
  const heights = upToToday('height');
  const identity = last(upToToday('identity'));
  const loadings = loadingsBy(
    upToToday('vitamin-d-loading'),
    upToToday('vitamin-d-taken'),
    upToToday('vitamin-d-loading-stopped'),
  );
  const maintenance = last(upToToday('vitamin-d-maintenance'));
  const pregnancy = last(upToToday('pregnancy'));
  const consent = last(upToToday('consent'));
  const saidNo = noAfterConsent(consent, last(upToToday('refusal')));
  const capacity = last(upToToday('capacity'));
  const prescriptions = upToToday('prescription');
  const causes = last(upToToday('secondary-causes'));
  const allDoses = upToToday('dose');
  const lastGiven = new Map<BoneMedicine, { readonly dose: Fact<'dose'>; readonly agreed: boolean }>();
  for (const dose of allDoses) lastGiven.set(dose.body.medicine, { dose, agreed: decided(dose, 'switch agreed') });
  const reactions = upToToday('reaction');
  const fractures = upToToday('fracture');
  const conditions = upToToday('condition');
  const symptoms = upToToday('symptom');
  const cleared = upToToday('symptom-cleared');
  const checklists = upToToday('checklist');
  const wellSince = last(upToToday('well-since'));
  const medicines = upToToday('medicine');

  return {
    today,
    identity,
    mayBeTwice: factsOf(record, 'same-person').length === 0 ? undefined : last(leftOpen(record, today)),
    born: identity === undefined ? undefined : parsePartialDate(identity.body.born),
    sex: identity?.body.sex,
    allergies: upToToday('allergy'),
    allergiesAssumed: false,
    severeReactions:
      reactions.length === 0
        ? none
        : reactions.filter((one) => one.body.severity === 'severe' && !decided(one, 'severe reaction looked into')),
    pregnancy:
      pregnancy === undefined ? undefined : { answer: pregnancy.body.answer, on: pregnancy.on, entry: pregnancy.id },
    illnesses: upToToday('illness'),
    checklists,
    wellSince: wellSince === undefined ? undefined : { on: wellSince.on, seq: wellSince.seq },
    operations: upToToday('surgery'),
    hipFractures:
      fractures.length === 0
        ? none
        : fractures
            .filter(({ body }) => body.site === 'hip')
            .map((fracture) => ({ fracture, lookedInto: decided(fracture, 'hip fracture looked into') })),
    undecidedFractures:
      fractures.length === 0
        ? none
        : fractures.filter(
            (one) =>
              (one.body.site === 'thigh shaft' || one.body.site === 'other') &&
              !decided(one, 'thigh fracture not atypical'),
          ),
    creatinine: creatinine === undefined ? undefined : sampleFrom(creatinine, isSigned, contradicted),
    baselineCreatinines: baselines,
    riseAccepted: decided(creatinine, 'creatinine rise accepted'),
    lowClearanceAccepted: decided(creatinine, 'low clearance accepted'),
    calcium: calciumFrom(newest, albumins, isSigned, contradicted),
    vitaminD: vitaminD === undefined ? undefined : sampleFrom(vitaminD, isSigned, contradicted),
    weight:
      weighed === undefined
        ? undefined
        : {
            on: weighed.on,
            value: weighed.body.quantity,
            method: weighed.body.method,
            caution: weighed.body.caution,
            entry: weighed.id,
            actualDecides: decided(weighed, 'weight: actual decides'),
            before:
              weighedBefore === undefined
                ? undefined
                : { on: weighedBefore.on, value: weighedBefore.body.quantity, entry: weighedBefore.id },
            changeLookedInto: decided(weighed, 'weight change looked into'),
          },
    actualDecidesAssumed: false,
    height: heights.findLast(({ body }) => body.which === 'peak adult') ?? last(heights),
    loading: last(loadings),
    finishedLoadings: loadings.filter((loading) => loading.state.is === 'finished'),
    maintenance:
      maintenance === undefined
        ? undefined
        : { taken: maintenance.body.taken, on: maintenance.on, entry: maintenance.id },
    doses: dosesGiven(record, today),
    lastGiven,
    otherProductDoses: !lastGiven.has('zoledronic acid 4 mg')
      ? none
      : allDoses.filter((one) => one.body.medicine === 'zoledronic acid 4 mg' && !decided(one, 'after 4 mg product')),
    anyZoledronicDose: lastGiven.has('zoledronic acid 5 mg') || lastGiven.has('zoledronic acid 4 mg'),
    course: courseFactsOf(record, today),
    carryOnAssumed: false,
    prescription: last(prescriptions),
    prescriptions,
    prescriptionAssumed: undefined,
    told:
      symptoms.length === 0
        ? checklists
        : [...symptoms.filter((symptom) => !cleared.some(({ body }) => body.entry === symptom.id)), ...checklists],
    isAnswerCleared:
      cleared.length === 0
        ? nothingCleared
        : (checklist, question) => cleared.some(({ body }) => body.entry === checklist && body.question === question),
    boneMedicines: medicines.length === 0 ? none : boneMedicinesIn(medicines),
    boneMedicinesStopped: undefined,
    minerals,
    conditions:
      decisions.length === 0 ? conditions : conditions.filter((one) => !decided(one, 'mineral metabolism looked into')),
    mineralsLookedInto: false,
    dental: upToToday('dental').map(({ body, on, id }) => ({
      answer: body.answer,
      on,
      checkedOn: body.checkedOn === undefined ? undefined : day(body.checkedOn),
      entry: id,
    })),
    secondaryCauses: causes === undefined ? undefined : { answer: causes.body.answer, on: causes.on, entry: causes.id },
    lastDose: last(allDoses),
    consent: consent === undefined ? undefined : { decision: consent.body.decision, on: consent.on, entry: consent.id },
    saidNo,
    cannotDecide: capacity?.body.answer === 'cannot decide this' ? capacity : undefined,
    exceptions: exceptionsOf(upToToday('prescriber-exception')),
    medicines,
    nephrotoxic: medicines.length === 0 ? none : medicines.filter(({ body }) => body.sort === 'nephrotoxic'),
    calciumLowering: medicines.length === 0 ? none : medicines.filter(({ body }) => body.sort === 'calcium-lowering'),
  };
}
