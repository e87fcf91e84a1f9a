/** Everything one hand-written line is checked for, in the notes as they stand when it is written. */
import { type Day, day, shortDate } from '../calendar/day.ts';
import { unitsOf } from '../exact/quantity.ts';
import { plural } from '../kinds-texts/words.ts';
import { type KindName, kindNamed } from '../kinds/index.ts';
import type { Draft } from '../ledger/entry.ts';
import { type Protocol, regimenNamed } from '../protocol/protocol.ts';
import { isTakenDaily } from '../protocol/medicines.ts';
import { protocolInForceOn } from '../protocol/in-force.ts';
import { lookedAgainAtKinds } from '../record/made-while-it-stood.ts';
import { type Fact, type SubjectRecord, factWithId, factsOf, latest } from '../record/patient-record.ts';
import { lastDayOfException } from '../requirements/exceptions.ts';
import { isPrescribersToClear } from '../requirements/symptoms.ts';
import { eventOf } from '../standing/transitions.ts';
import { checkAftercare } from './check-aftercare.ts';
import { checkChair, checkEveryAnswer, checkObserved } from './check-arrived-and-observed.ts';
import { checkCareGoesOn } from './check-care.ts';
import { checkConfirmedByChecker } from './check-home-dose.ts';
import { checkLetters } from './check-letters.ts';
import { checkMessages } from './check-messages.ts';
import { checkOwnPage } from './check-own-page.ts';
import { checkCourseReview } from './check-course-review.ts';
import { checkConsent, checkRisk, checkTalk } from './check-deciding.ts';
import { bornOf, checkBorn, checkNotBeforeBirth, checkNotFuture, dayOf } from './check-dates.ts';
import { checkedBody, fieldWrong } from './check-fields.ts';
import { checkPharmacyAnswer, checkPharmacyCheck } from './check-pharmacy.ts';
import { checkReaction } from './check-reaction.ts';
import { WHOLE_DOSE_MILLILITERS, checkRunningTime } from './check-running-time.ts';
import { asFact, checkPossible } from './check-standing.ts';
import { checkClosed } from './needs-what-follows.ts';
import { checkSupport } from './check-support.ts';
import { type Refusal } from './refusal.ts';
import { notYours, refusal } from './refuse.ts';
import type { Surroundings } from './surroundings.ts';

export type Line = { readonly kind: KindName; readonly body?: unknown; readonly effectiveAt: Draft['effectiveAt'] };
export type CheckedLine = { readonly fact: Fact | undefined; readonly refusals: readonly Refusal[] };

/** Checks that hold for every line however it comes: may this role, is the body right, is the date possible. */
export function checkLine(
  record: SubjectRecord,
  line: Line,
  path: string,
  now: Surroundings,
  brought = false,
): CheckedLine {
  const refusals: Refusal[] = [];
  const kind = kindNamed(line.kind);
  if (!brought && !kind.writes.includes(now.by.role))
    refusals.push(notYours(now.by.role, `write "${kind.label}"`, kind.writes));
  const checked = checkedBody(line.kind, line.body, `${path}.body`);
  if ('refusals' in checked) refusals.push(...checked.refusals);
  refusals.push(...checkNotFuture(line.effectiveAt, `${path}.effectiveAt`, now));
  const on = dayOf(line.effectiveAt);
  if (on === undefined || 'refusals' in checked) return { fact: undefined, refusals };
  const fact = asFact(line.kind, checked.body, on, now);
  const born = line.kind === 'identity' ? (fact as Fact<'identity'>).body.born : bornOf(record);
  refusals.push(
    ...checkNotBeforeBirth(born, on, `${path}.effectiveAt`),
    ...checkWithin(record, fact, `${path}.body`, now),
  );
  return { fact, refusals };
}

/** For a new line, not a correction: care must go on, and the event must be possible from where the person stands. */
export const checkNewLine = (record: SubjectRecord, fact: Fact, now: Surroundings): readonly Refusal[] => {
  const ended = checkCareGoesOn(record, fact.kind, fact.on, now);
  return ended.length > 0
    ? ended
    : [
        ...checkPossible(record, eventOf(fact), fact.on, now),
        ...checkNotTwice(record, fact),
        ...checkLetters(record, fact, now),
        ...checkMessages(record, fact, now),
        ...checkOwnPage(record, fact, now),
      ];
};

type Within = {
  readonly [Kind in KindName]?: (
    record: SubjectRecord,
    fact: Fact<Kind>,
    path: string,
    now: Surroundings,
  ) => readonly Refusal[];
};

/** What a body says must fit itself and the notes it points into. */
const within: Within = {
  identity: (_, { body }, path, now) => checkBorn(body.born, `${path}.born`, now),
  arrived: (_, { body }, path, now) => checkChair(body, path, now),
  observations: (_, { body }, path) => checkObserved(body, path),
  checklist: (record, fact, path, now) => checkEveryAnswer(record, fact, path, now),
  result: (_, { body }, path) => checkUnit(body, path),
  'results-signed': (record, { body }, path) =>
    body.results.flatMap((id) => checkPointsAt(record, id, ['result'], `${path}.results`)),
  'symptom-cleared': (record, { body }, path, now) => checkCleared(record, body, path, now),
  'looked-again': (record, { body }, path, now) => [
    ...checkPointsAt(record, body.about, lookedAgainAtKinds, `${path}.about`),
    ...checkConfirmedByChecker(factWithId(record, body.about), `${path}.about`, now),
  ],
  'prescriber-decision': (record, { body }, path) =>
    checkPointsAt(record, body.about, aboutOf[body.question], `${path}.about`),
  'prescriber-exception': (_, { body, on }, path, now) => checkException(body, on, path, now),
  fracture: (_, { body }, path) =>
    body.site === 'other' && body.bone === undefined
      ? [
          fieldWrong(
            `${path}.bone`,
            'not said',
            'which bone; hand, foot, skull, finger, toe and ankle are left out of the fragility fractures (IOF 2012)',
          ),
        ]
      : [],
  prescription: (_, { body }, path, now) => checkPrescription(body, path, now),
  'pharmacy-check': (record, fact, path, now) => checkPharmacyCheck(record, fact, path, now),
  'pharmacy-answer': (record, fact, path) => checkPharmacyAnswer(record, fact, path),
  'support-booking': (record, fact, path) => checkSupport(record, fact, path),
  'told-of-batch': (record, { body, on }, path) => {
    const died = latest(record, 'died');
    return died === undefined || on < died.on || toldThroughOthers.has(body.how)
      ? []
      : [fieldWrong(`${path}.how`, `they died on ${shortDate(died.on)}`, plural([...toldThroughOthers], 'or'))];
  },
  reaction: (record, fact, path) => checkReaction(record, fact, path),
  aftercare: (record, fact, path, now) => checkAftercare(record, fact, path, now),
  'red-flag-passed-on': (record, { body }, path) =>
    checkPointsAt(record, body.about, ['aftercare', 'call'], `${path}.about`),
  'reaction-reported': (record, { body }, path) =>
    checkPointsAt(record, body.reaction, ['reaction'], `${path}.reaction`),
  dose: (_, { body, on }, path, now) => [...checkUntil(body, on, path), ...checkDripTime(body, on, path, now)],
  'course-review': (record, fact, path, now) => checkCourseReview(record, fact, path, protocolToday(now)),
  closed: (record, fact, path, now) => checkClosed(record, fact, path, protocolToday(now), now.by.role),
  'baseline-risk': (_, { body }, path) => checkRisk(body, path),
  talk: (_, { body, on }, path) => checkTalk(body, on, path),
  consent: (record, fact) => checkConsent(record, fact),
  medicine: (_, { body, on }, path) =>
    body.stoppedOn !== undefined && day(body.stoppedOn) < on
      ? [fieldWrong(`${path}.stoppedOn`, 'stopped before it was begun', "the entry's own date is the day it was begun")]
      : [],
};

/** Of somebody who has died others are told. */
const toldThroughOthers: ReadonlySet<string> = new Set([
  'through a relative or carer',
  'through their family doctor',
] satisfies Fact<'told-of-batch'>['body']['how'][]);

function checkWithin(record: SubjectRecord, fact: Fact, path: string, now: Surroundings): readonly Refusal[] {
  const check = within[fact.kind] as
    | ((record: SubjectRecord, fact: Fact, path: string, now: Surroundings) => readonly Refusal[])
    | undefined;
  return check === undefined ? [] : check(record, fact, path, now);
}

/** One answer of a checklist at a time, and only one that was given and stays until it is cleared; a symptom is one already. */
function checkCleared(
  record: SubjectRecord,
  { entry, question }: Fact<'symptom-cleared'>['body'],
  path: string,
  now: Surroundings,
): readonly Refusal[] {
  const wrong = checkPointsAt(record, entry, ['symptom', 'checklist'], `${path}.entry`);
  const told = factWithId(record, entry);
  if (wrong.length > 0 || told === undefined) return wrong;
  const field = `${path}.question`;
  if (told.kind === 'symptom') {
    const { what } = (told as Fact<'symptom'>).body;
    if (question !== undefined) return [fieldWrong(field, 'a symptom has no questions', 'leave it empty')];
    return isPrescribersToClear(what) ? checkPrescriber(what, now) : [];
  }
  if (question === undefined)
    return [fieldWrong(field, 'not said', 'which answer of the checklist was looked into: each is cleared by itself')];
  const asked = protocolToday(now)?.sheet.dayQuestions.find(({ id }) => id === question);
  const answer = (told as Fact<'checklist'>).body.answers[question]?.answer;
  if (answer === undefined || (asked !== undefined && answer !== asked.holdsOn))
    return [fieldWrong(field, 'that answer holds nothing', 'a question that was answered so that it holds the dose')];
  if (asked !== undefined && asked.staysUntilCleared !== true)
    return [fieldWrong(field, `"${asked.asks}" is not cleared but asked again`, 'answer the checklist again')];
  return asked?.then === 'not ready' ? checkPrescriber(asked.says, now) : [];
}

const checkPrescriber = (what: string, { by }: Surroundings): readonly Refusal[] =>
  by.role === 'prescriber' ? [] : [notYours(by.role, `clear "${what}"`, ['prescriber'])];

const aboutOf = {
  'creatinine rise accepted': ['result'],
  'low clearance accepted': ['result'],
  'weight: actual decides': ['weight'],
  'weight change looked into': ['weight'],
  'part dose counts': ['dose'],
  'part dose does not count': ['dose'],
  'after 4 mg product': ['dose'],
  'mineral metabolism looked into': ['result', 'condition'],
  'switch agreed': ['dose'],
  'severe reaction looked into': ['reaction'],
  'hip fracture looked into': ['fracture'],
  'thigh fracture not atypical': ['fracture'],
  'saturation on scale 2': ['observations'],
} as const satisfies Record<Fact<'prescriber-decision'>['body']['question'], readonly KindName[]>;

/** What a prescriber's decision may be about. */
export const decidedAboutKinds: readonly KindName[] = [...new Set(Object.values(aboutOf).flat())];

/** A whole drip written by hand with its minutes is asked about like one that was timed here. */
const checkDripTime = (
  { medicine, minutes, partMilliliters, incident }: Fact<'dose'>['body'],
  on: Day,
  path: string,
  now: Surroundings,
): readonly Refusal[] =>
  medicine !== 'zoledronic acid 5 mg' || minutes === undefined || partMilliliters !== undefined
    ? []
    : checkRunningTime(
        { milliliters: WHOLE_DOSE_MILLILITERS, minutes, says: `${minutes} min`, incident, by: 'the times given' },
        `${path}.incident`,
        { ...now, today: on },
      );

/** An exception ends, and no later than the protocol says. */
function checkException(
  { expiresOn }: Fact<'prescriber-exception'>['body'],
  on: Day,
  path: string,
  now: Surroundings,
): readonly Refusal[] {
  const field = `${path}.expiresOn`;
  if (day(expiresOn) < on) return [fieldWrong(field, 'over before it begins', 'the last day on which it stands')];
  const protocol = protocolToday(now);
  if (protocol === undefined) return [];
  const last = lastDayOfException(on, protocol);
  return day(expiresOn) <= last
    ? []
    : [
        fieldWrong(
          field,
          `an exception lasts ${protocol.number.exceptionLongestDays} days at most`,
          `${shortDate(last)} or earlier; a new one can be made then`,
        ),
      ];
}

/** Only what is taken daily has a last day, and not before its first. */
function checkUntil({ medicine, until }: Fact<'dose'>['body'], on: Day, path: string): readonly Refusal[] {
  if (until === undefined) return [];
  if (!isTakenDaily(medicine))
    return [fieldWrong(`${path}.until`, `${medicine} is given in doses`, 'leave the last day empty')];
  return day(until) < on
    ? [fieldWrong(`${path}.until`, 'ended before it was begun', "the entry's own date is the first day")]
    : [];
}

function checkUnit({ analyte, quantity }: Fact<'result'>['body'], path: string): readonly Refusal[] {
  const units: readonly string[] = unitsOf[analyte];
  return units.includes(quantity.unit)
    ? []
    : [
        fieldWrong(
          `${path}.quantity.unit`,
          `${analyte} is not reported in ${quantity.unit}`,
          `${plural(units)}, as the laboratory printed it`,
        ),
      ];
}

function checkPointsAt(
  record: SubjectRecord,
  id: string,
  kinds: readonly KindName[],
  field: string,
): readonly Refusal[] {
  const target = factWithId(record, id);
  if (target === undefined)
    return [refusal('no-such-entry', 'The entry it points at is not in these notes, or was withdrawn.', { field })];
  return kinds.includes(target.kind)
    ? []
    : [
        refusal('entry-of-another-kind', `It points at an entry of kind "${kindNamed(target.kind).label}".`, {
          field,
          remedy: `choose: ${plural(kinds)}`,
        }),
      ];
}

const protocolToday = (now: Surroundings): Protocol | undefined =>
  now.context === undefined ? undefined : protocolInForceOn(now.context.protocols, now.today);

function checkPrescription(body: Fact<'prescription'>['body'], path: string, now: Surroundings): readonly Refusal[] {
  const refusals: Refusal[] = [];
  if (day(body.validUntil) < day(body.validFrom)) {
    refusals.push(fieldWrong(`${path}.validUntil`, 'ends before it begins', 'the last day on which it is valid'));
  }
  if (body.orderedAs === 'group direction' || body.groupDirection !== undefined || body.underDirection !== undefined) {
    refusals.push(
      fieldWrong(
        `${path}.orderedAs`,
        'an order under a group direction is recorded by a nurse whom the direction names',
        'what you sign yourself for one person is patient-specific',
      ),
    );
  }
  const protocol = protocolToday(now);
  if (protocol !== undefined && regimenNamed(protocol, body.regimen) === undefined) {
    refusals.push(
      fieldWrong(
        `${path}.regimen`,
        `the protocol knows no regimen "${body.regimen}"`,
        plural(protocol.sheet.regimens.map(({ id }) => id)),
      ),
    );
  }
  return refusals;
}

/** The same dose told twice (by the ward and by the patient) would count twice. */
function checkNotTwice(record: SubjectRecord, fact: Fact): readonly Refusal[] {
  if (fact.kind !== 'dose') return [];
  const { medicine } = (fact as Fact<'dose'>).body;
  const same = factsOf(record, 'dose').some((dose) => dose.on === fact.on && dose.body.medicine === medicine);
  return same
    ? [
        refusal('step-already-done', `${medicine} on ${shortDate(fact.on)} is in the notes already.`, {
          remedy: 'correct that entry if it is not right',
        }),
      ]
    : [];
}
