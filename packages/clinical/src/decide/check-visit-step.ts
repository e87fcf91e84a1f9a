/** The steps of a visit that are written by hand: each in its order, each once. */
import { shortDate } from '../calendar/day.ts';
import type { KindName } from '../kinds/index.ts';
import { subject } from '../ledger/subject.ts';
import { protocolInForceOn } from '../protocol/in-force.ts';
import { type Fact, type SubjectRecord, latest } from '../record/patient-record.ts';
import { failedTries } from '../visit/failed-tries.ts';
import { placeOf, sessionOf } from '../visit/session-list.ts';
import { type Visit, isFlushed, nothingGiven, visitOn } from '../visit/visit.ts';
import { fieldWrong } from './check-fields.ts';
import { checkInTheOpening } from './check-in-the-opening.ts';
import { checkPack } from './check-pack.ts';
import { checkVerified } from './check-pharmacy.ts';
import { checkGivenByHand } from './check-given-by-hand.ts';
import { recordIn } from './ledgers.ts';
import { checkStillOrdered } from './ordered-medicine.ts';
import { type Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';
import { alreadyDone, checkGo, outOfOrder } from './step-order.ts';
import type { Surroundings } from './surroundings.ts';

const visitKinds: ReadonlySet<KindName> = new Set([
  'arrived',
  'observations',
  'checklist',
  'cannula',
  'flush',
  'preparation',
  'site-check',
  'cannula-removed',
  'observed',
  'left',
  'dose',
]);

export function checkVisitStep(record: SubjectRecord, fact: Fact, now: Surroundings): readonly Refusal[] {
  if (!visitKinds.has(fact.kind)) return [];
  const visit = visitOn(record, fact.on);
  if (fact.kind === 'dose') return checkGivenByHand(fact as Fact<'dose'>, record, visit, now);
  if (fact.kind === 'arrived') return checkArrival(fact as Fact<'arrived'>, record, visit, now);
  if (visit === undefined) {
    return [
      refusal('not-here', `Nobody has recorded that this person arrived on ${shortDate(fact.on)}.`, {
        remedy: 'record the arrival first',
      }),
    ];
  }
  if (visit.over)
    return [
      refusal('visit-over', `They left on ${shortDate(visit.on)}: the visit is over.`, {
        remedy: 'withdraw "left" if they are still here',
      }),
    ];
  const dripped =
    fact.kind === 'preparation'
      ? [
          ...checkStillOrdered(record, visit, now, 'line.body.product'),
          ...checkVerified(record, now, isFromPaper(fact as Fact<'preparation'>)),
          ...(isFromPaper(fact as Fact<'preparation'>) ? [] : checkInTheOpening(visit, now)),
          ...checkPack(fact as Fact<'preparation'>, record, now),
        ]
      : [];
  return [
    ...checkArm(record, fact),
    ...checkAnotherOperator(record, fact, now),
    ...dripped,
    ...checkInVisit(fact, visit, now),
  ];
}

const isFromPaper = ({ body }: Fact<'preparation'>): boolean => body.typedBecause === 'typed in later';

/** Hazard 71: lymph nodes, a fistula, a stroke. The arm is used only for a reason that somebody writes down. */
function checkArm(record: SubjectRecord, fact: Fact): readonly Refusal[] {
  if (fact.kind !== 'cannula') return [];
  const { site, armToAvoidUsedBecause } = (fact as Fact<'cannula'>).body;
  return armToAvoidUsedBecause === undefined
    ? checkArmToAvoid(
        record,
        site,
        'line.body.armToAvoidUsedBecause',
        'use the other arm, or write why this one and who agreed',
      )
    : [];
}

/** `site`: "left forearm", "right arm vein"; a thigh is no arm. */
export function checkArmToAvoid(
  record: SubjectRecord,
  site: string,
  field: string,
  remedy: string,
): readonly Refusal[] {
  const { armToAvoid, armToAvoidBecause } = latest(record, 'contact')?.body ?? {};
  if (armToAvoid === undefined || !site.startsWith(armToAvoid) || site.endsWith('thigh')) return [];
  const why = armToAvoidBecause === undefined ? '' : ` (${armToAvoidBecause})`;
  return [
    refusal('arm-to-avoid', `The ${armToAvoid} arm is to be avoided${why}.`, {
      field,
      remedy,
    }),
  ];
}

/** Hazard 32: after so many failed tries by one pair of hands another pair is asked. */
function checkAnotherOperator(record: SubjectRecord, fact: Fact, now: Surroundings): readonly Refusal[] {
  const protocol = now.context === undefined ? undefined : protocolInForceOn(now.context.protocols, now.today);
  if (fact.kind !== 'cannula' || protocol === undefined) return [];
  const failed = failedTries(record, fact.on).get(now.by.staff) ?? 0;
  if (failed < protocol.number.cannulaTriesBeforeOther) return [];
  return [
    refusal('another-operator', `You have tried ${failed} times today.`, {
      field: 'line.body.tries',
      remedy: 'ask somebody else to try and to record it; warm the arm and let them drink first',
    }),
  ];
}

function checkArrival(
  fact: Fact<'arrived'>,
  record: SubjectRecord,
  visit: Visit | undefined,
  now: Surroundings,
): readonly Refusal[] {
  if (visit !== undefined) {
    return visit.over
      ? [
          refusal('visit-over', `They were here on ${shortDate(visit.on)} and have gone home.`, {
            remedy: 'a second visit needs another day',
          }),
        ]
      : [refusal('already-here', 'Their arrival is in the notes.', { remedy: 'go on with the next step' })];
  }
  const session = sessionOf(recordIn(now, subject('session', fact.body.session)));
  if (session === undefined)
    return [refusal('unknown-session', 'There is no such session.', { field: 'line.body.session' })];
  if (session.cancelled !== undefined)
    return [refusal('session-cancelled', `That session was cancelled (${session.cancelled.reason}).`)];
  const patient = record.subject.slice('patient/'.length);
  if (session.on !== fact.on || placeOf(session, patient) === undefined) {
    return [
      refusal('not-booked-there', `They have no place on that list on ${shortDate(fact.on)}.`, {
        remedy: 'book them onto the session, then record the arrival',
      }),
    ];
  }
  return [];
}

function checkInVisit(fact: Fact, visit: Visit, now: Surroundings): readonly Refusal[] {
  const check = checks[fact.kind] as ((fact: Fact, visit: Visit, now: Surroundings) => readonly Refusal[]) | undefined;
  return check === undefined ? [] : check(fact, visit, now);
}

type Checks = {
  readonly [Kind in KindName]?: (fact: Fact<Kind>, visit: Visit, now: Surroundings) => readonly Refusal[];
};

const checks: Checks = {
  checklist: (_, visit) => {
    if (visit.observationsBefore === undefined)
      return outOfOrder('Observations come first.', 'record the observations');
    return visit.checklist === undefined || visit.decision?.body.decision === 'ask a prescriber'
      ? []
      : alreadyDone('The questions of the day are answered.');
  },
  cannula: (_, visit) => [...checkGo(visit), ...checkCannula(visit)],
  flush: ({ body }, visit) => checkFlush(body, visit),
  preparation: ({ body }, visit, now) => [
    ...checkGo(visit),
    ...(visit.preparation === undefined ? [] : alreadyDone('A preparation is in the notes.')),
    ...checkOnePack(visit),
    ...checkDripMinutes(body.minutes, visit, now),
  ],
  'site-check': (_, visit) =>
    visit.infusion !== undefined && visit.removed === undefined
      ? []
      : outOfOrder('No infusion has started, or its cannula is out.', 'look at the site while it runs'),
  'cannula-removed': (_, visit) => checkRemoval(visit),
  observations: ({ body }, visit) => (body.when === 'after' ? checkGivenBefore(visit) : []),
  observed: (_, visit) => {
    const early = checkGivenBefore(visit);
    if (early.length > 0) return early;
    return visit.observed === undefined ? [] : alreadyDone('Watching after the dose is in the notes.');
  },
  left: (_, visit) => checkLeaving(visit),
};

/** What is after the dose: no medicine runs any more, or it was injected. */
const checkGivenBefore = ({ infusion, injected }: Visit): readonly Refusal[] =>
  infusion?.finished === undefined && !injected ? outOfOrder('The infusion has not finished.', 'finish it first') : [];

/** A second cannula is placed only while the medicine stands still, and after the first is out: one way in at a time. */
function checkCannula(visit: Visit): readonly Refusal[] {
  if (visit.cannula === undefined || visit.removed !== undefined) return [];
  if (visit.infusion !== undefined && visit.infusion.finished === undefined && visit.infusion.paused !== undefined)
    return outOfOrder(
      `The cannula in the ${visit.cannula.body.site} is still in.`,
      'take it out and say how its site looks, then place another',
    );
  return alreadyDone('A cannula is in place.');
}

/** What is missing at the way in before the medicine runs. */
export const notFlushed = {
  says: 'No flush has run freely through a line without calcium.',
  remedy: "take off whatever holds calcium (Ringer's, Hartmann's), flush with saline and look at the site",
} as const;

function checkFlush({ when, calciumInLine }: Fact<'flush'>['body'], visit: Visit): readonly Refusal[] {
  if (visit.cannula === undefined) return outOfOrder('There is no cannula in place.', 'place it first');
  if (when === 'after')
    return visit.infusion?.finished === undefined
      ? outOfOrder('The infusion has not finished.', 'flush after it has')
      : [];
  if (isFlushed(visit.flush)) return alreadyDone('The flush ran freely and is in the notes.');
  return calciumInLine === undefined
    ? [
        fieldWrong(
          'line.body.calciumInLine',
          'not answered',
          "whether anything with calcium (Ringer's, Hartmann's) runs in this line",
        ),
      ]
    : [];
}

function checkRemoval(visit: Visit): readonly Refusal[] {
  if (visit.cannula === undefined) return outOfOrder('There is no cannula in place.', 'nothing to remove');
  if (visit.removed !== undefined) return alreadyDone('The cannula is out.');
  const { infusion } = visit;
  if (infusion === undefined || infusion.finished !== undefined || infusion.paused !== undefined) return [];
  return outOfOrder('The infusion is running.', 'pause or finish it first');
}

/** Never more than 5 mg in total: once one pack has begun to run no other is prepared, whatever was lost beside the vein. */
const checkOnePack = ({ infusion }: Visit): readonly Refusal[] =>
  infusion === undefined
    ? []
    : [
        refusal('more-than-the-dose', 'A pack has begun to run today: there is no second one.', {
          remedy: 'stop for good, say how much was given; a prescriber says whether it counts',
        }),
      ];
/** Only a drip runs. */
function checkDripMinutes(minutes: number | undefined, { injection }: Visit, now: Surroundings): readonly Refusal[] {
  if (injection !== undefined) return [];
  const field = 'line.body.minutes';
  return minutes === undefined
    ? [fieldWrong(field, 'not said', 'in how many minutes it is to run')]
    : checkMinutes(minutes, field, now);
}

export function checkMinutes(minutes: number, field: string, now: Surroundings): readonly Refusal[] {
  const protocol = now.context === undefined ? undefined : protocolInForceOn(now.context.protocols, now.today);
  if (protocol === undefined) return [];
  const least = protocol.number.runningMinutesLeast;
  return minutes >= least
    ? []
    : [
        refusal(
          'under-the-minimum-minutes',
          `${minutes} minutes is under the ${least} minutes the infusion must take.`,
          { field, remedy: `${least} minutes or more` },
        ),
      ];
}

function checkLeaving(visit: Visit): readonly Refusal[] {
  if (visit.infusion !== undefined && visit.infusion.finished === undefined)
    return outOfOrder('The infusion has not finished.', 'finish it first');
  if (visit.cannula !== undefined && visit.removed === undefined)
    return outOfOrder('The cannula is still in.', 'remove it and record how the site looks');
  if (visit.decision === undefined || visit.decision.body.decision === 'ask a prescriber') {
    return outOfOrder('Nothing was decided yet.', 'go, or put off with the reason');
  }
  if (visit.putOff) return [];
  if (nothingGiven(visit) || (visit.infusion === undefined && !visit.injected))
    return outOfOrder(
      'No dose was given and nothing says why.',
      'put the dose off with the reason, then they can leave',
    );
  if (visit.observed === undefined)
    return outOfOrder('Nobody has watched them after the dose.', 'record how long they were watched and how they are');
  return visit.dose !== undefined && visit.dose.body.batch === undefined
    ? outOfOrder('The batch is missing from the dose.', 'correct the dose: batch as printed on the pack')
    : [];
}
