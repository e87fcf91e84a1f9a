/**
 * An injection is given: what was prepared and, where the protocol asks for another person, checked by them without seeing the
 * first reading. What is asked before a drip runs is asked before it goes in.
 */
import { counted, plural } from '../kinds-texts/words.ts';
import { injectionOf, injectionSites } from '../kinds/products.ts';
import { subject } from '../ledger/subject.ts';
import type { SubjectRecord } from '../record/patient-record.ts';
import type { Visit } from '../visit/visit.ts';
import type { ActNamed } from './act.ts';
import { checkGiver } from './check-giver.ts';
import { fieldWrong } from './check-fields.ts';
import { checkInTheOpening } from './check-in-the-opening.ts';
import { checkPreparedStillGood } from './check-pack.ts';
import { checkVerified } from './check-pharmacy.ts';
import { checkArmToAvoid } from './check-visit-step.ts';
import { draftNow } from './draft.ts';
import { checkStillReady } from './go.ts';
import { asItHappened, checkHappenedAt } from './happened-at.ts';
import { atTheChair } from './at-the-drip.ts';
import { checkChecked, checkSessionIsOpen, waitedInWords, waitedTooLong } from './start-infusion.ts';
import { checkStillOrdered } from './ordered-medicine.ts';
import { type Refusal } from './refusal.ts';
import { decided, refusal } from './refuse.ts';
import type { Decided, Surroundings } from './surroundings.ts';

type Give = ActNamed<'give injection'>;

export function decideGiveInjection(act: Give, written: Surroundings): Decided {
  const now = asItHappened(act.happenedAt, written);
  const { record, visit, refusals } = atTheChair(act, now);
  if (visit === undefined || visit.over) return decided(refusals, () => []);
  refusals.push(
    ...checkPrepared(record, visit, now),
    ...checkWhere(act, record, visit),
    ...checkInTheOpening(visit, now),
    ...checkGiver(record, now.today, now),
    ...checkHappenedAt(act.happenedAt, [visit.decision, visit.preparation, visit.check], written),
  );
  const { injection, preparation } = visit;
  if (injection === undefined || preparation === undefined) return decided(refusals, () => []);
  return decided(refusals, () => [
    draftNow(
      subject('patient', act.patient),
      'dose',
      {
        medicine: injection.medicine,
        setting: 'this service',
        batch: preparation.body.batch,
        injectedInto: act.injectedInto,
        injections: act.injections,
        identifiers: act.identifiers,
      },
      now,
    ),
  ]);
}

function checkPrepared(record: SubjectRecord, visit: Visit, now: Surroundings): readonly Refusal[] {
  const { injection, preparation, dose } = visit;
  if (dose !== undefined) return [refusal('step-already-done', 'The dose of today has been given.')];
  const outOfOrder = (says: string, remedy: string) => refusal('step-out-of-order', says, { remedy });
  if (injection === undefined)
    return [outOfOrder('There is no decision to go for an injection.', 'finish the checklist, then decide')];
  const refusals = [
    ...checkStillOrdered(record, visit, now),
    ...checkVerified(record, now, false),
    ...checkSessionIsOpen(visit, now),
    ...checkStillReady(record, now),
  ];
  if (preparation === undefined) return [...refusals, outOfOrder('No pack was prepared and read.', 'prepare it')];
  return [
    ...refusals,
    ...checkPreparedStillGood(preparation, visit, now),
    ...(injection.checkedByAnother || visit.check !== undefined ? checkChecked(visit, preparation, now) : []),
    ...checkRecent(visit, now),
  ];
}

/** Hazard 56: after an interruption the check is made anew. */
function checkRecent(visit: Visit, now: Surroundings): readonly Refusal[] {
  const waited = waitedTooLong(visit, now);
  return waited === undefined
    ? []
    : [
        refusal('step-out-of-order', `The check is not recent: ${waitedInWords(waited)}.`, {
          remedy: 'withdraw the check with the reason, and let it be made again',
        }),
      ];
}

/** Where this medicine goes, all of its packs, and not into an arm that is to be avoided. */
function checkWhere({ injectedInto, injections }: Give, record: SubjectRecord, visit: Visit): readonly Refusal[] {
  const given = visit.injection === undefined ? undefined : injectionOf(visit.injection.medicine);
  if (given === undefined) return [];
  const sites: readonly string[] = injectionSites[given.goes];
  return [
    ...(sites.includes(injectedInto)
      ? []
      : [fieldWrong('injectedInto', `it goes ${given.goes}, not into the ${injectedInto}`, plural(sites, 'or'))]),
    ...(injections === given.packs
      ? []
      : [
          fieldWrong(
            'injections',
            `one dose is ${counted(given.packs, 'injection')} of ${given.product}`,
            'give the whole dose; of a part, tell the prescriber and write it as a dose given with what happened',
          ),
        ]),
    ...checkArmToAvoid(record, injectedInto, 'injectedInto', 'use another place'),
  ];
}
