/** Picks what the requirements read out of a record, once. Facts dated after `today` are left out here and nowhere else. */
import { type Day, day } from '../calendar/day.ts';
import { parsePartialDate } from '../calendar/partial-date.ts';
import { courseFactsOf } from '../course/course-facts.ts';
import { dosesGiven } from '../course/doses.ts';
import type { Analyte } from '../exact/quantity.ts';
import { creatinineUmolPerL, usable } from '../formulas/units.ts';
import type { BodyOfKind, KindName } from '../kinds/index.ts';
import type { Uuid } from '../ledger/entry.ts';
import type { BoneMedicine } from '../protocol/medicines.ts';
import { noAfterConsent } from '../record/no-after-consent.ts';
import { type Fact, type SubjectRecord, factsOf, upTo } from '../record/patient-record.ts';
import { reactionsToDecide } from '../record/reaction-to-decide.ts';
import { leftOpen } from '../record/same-person.ts';
import { boneMedicinesIn } from './bone-medicines-in.ts';
import { decidingMinerals, isMineralTest } from './deciding-minerals.ts';
import { calciumFrom, isSameValue, sampleFrom } from './deciding-sample.ts';
import type { Evidence } from './evidence.ts';
import { exceptionsOf } from './exceptions.ts';
import { loadingsBy } from './loading.ts';

const last = <T>(list: readonly T[]): T | undefined => (list.length === 0 ? undefined : list[list.length - 1]);

const none: readonly never[] = [];
const nothingCleared = (): boolean => false;

/**
 * The deciding facts of a record, as far as they are dated on or before `today`. Most people have nothing of most kinds, and
 * this is asked of thousands: where there is nothing, nothing is made.
 */
export function pickEvidence(whole: SubjectRecord, today: Day): Evidence {
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
      const { on, body } = result;
      const umol = body.acuteAdmission === true ? undefined : usable(body.quantity, creatinineUmolPerL);
      if (umol !== undefined) baselines.push({ on, umol });
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
    reactionsToDecide: reactionsToDecide(record),
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
