/** The decision at the end of the checklist: go, put off, or ask a prescriber, with what it was based on. */
import { day, plainDate, shortDate } from '../calendar/day.ts';
import { subject } from '../ledger/subject.ts';
import { protocolInForceOn } from '../protocol/in-force.ts';
import { RULE_SET } from '../readiness/rule-set.ts';
import { goVerdict } from '../readiness/go-verdict.ts';
import type { Verdict } from '../readiness/verdict.ts';
import { type Fact, type SubjectRecord } from '../record/patient-record.ts';
import { type Visit, nothingGiven, visitOn } from '../visit/visit.ts';
import type { ActNamed } from './act.ts';
import { checkCareGoesOn, checkKnown } from './check-care.ts';
import { fieldWrong } from './check-fields.ts';
import { checkNotRefused } from './check-pharmacy.ts';
import { draftNow } from './draft.ts';
import { asItHappened, checkHappenedAt } from './happened-at.ts';
import { patientIn } from './ledgers.ts';
import { injectionToGive } from './ordered-medicine.ts';
import { type Refusal } from './refusal.ts';
import { decided, refusal } from './refuse.ts';
import type { Decided, Surroundings } from './surroundings.ts';

export function decideGo(act: ActNamed<'decide'>, written: Surroundings): Decided {
  const now = asItHappened(act.happenedAt, written);
  const record = patientIn(now, act.patient);
  const refusals: Refusal[] = [...checkKnown(record), ...checkCareGoesOn(record, undefined, now.today, now)];
  const visit = visitOn(record, now.today);
  if (visit === undefined) return decided([...refusals, notHere()], () => []);
  refusals.push(
    ...checkTurn(act, visit),
    ...checkHappenedAt(act.happenedAt, [visit.observationsBefore, visit.checklist], written),
  );
  const found = verdictToday(record, now);
  if (act.decision === 'go') refusals.push(...checkReady(visit, found), ...checkNotRefused(record, now));
  refusals.push(...checkAnswered(act, now));
  return decided(refusals, () => [
    draftNow(subject('patient', act.patient), 'go-decision', bodyOf(act, found, record, now), now),
  ]);
}

const notHere = (): Refusal =>
  refusal('not-here', 'Nobody has recorded that this person arrived today.', { remedy: 'record the arrival first' });

/** What has to be said when no dose is given now, so that nobody put off is lost: each field that is open, by its name. */
function checkAnswered(act: ActNamed<'decide'>, { today }: Surroundings): readonly Refusal[] {
  if (act.decision === 'go') return [];
  const open = (field: keyof ActNamed<'decide'>, says: string, remedy: string): Refusal[] =>
    act[field] === undefined ? [fieldWrong(field, says, remedy)] : [];
  if (act.decision === 'ask a prescriber') return open('note', 'not said', 'what was found, and what is asked');
  return [
    ...open('reasonCode', 'a dose is put off for a reason', 'choose the reason from the list'),
    ...open(
      'couldHaveBeenSeen',
      'not answered',
      'whether it could have been seen before today; "not known" is an answer',
    ),
    ...open('nextStep', 'not said', 'what comes next, so that they come to their dose'),
    ...open('nextBy', 'not said', 'the last day for what comes next'),
    ...(act.nextBy !== undefined && day(act.nextBy) < today
      ? [fieldWrong('nextBy', 'a day that is over', `${shortDate(today)} or later`)]
      : []),
    ...open('nextOwner', 'not said', 'who does what comes next'),
    ...open('tellsThePatient', 'not said', 'a name or a role: who tells the patient'),
  ];
}

/** Put off is possible until something of the medicine has run in; go and ask need the questions first. */
function checkTurn(act: ActNamed<'decide'>, visit: Visit): readonly Refusal[] {
  if (visit.over)
    return [refusal('visit-over', 'They have gone home.', { remedy: 'withdraw "left" if they are still here' })];
  if (visit.infusion === undefined && visit.dose !== undefined)
    return [refusal('step-already-done', 'The dose of today has been given.')];
  if (visit.infusion !== undefined && !(act.decision === 'put off' && nothingGiven(visit) && !visit.putOff)) {
    return [
      refusal('step-already-done', 'The infusion was started.', {
        remedy: 'to end it early, finish it with the volume and the reason',
      }),
    ];
  }
  const before = visit.decision?.body.decision;
  if (before === 'put off' || (before === 'go' && act.decision === 'go')) {
    return [
      refusal('step-already-done', `It was decided: ${before}.`, {
        remedy: 'withdraw that decision with the reason, then decide anew',
      }),
    ];
  }
  if (act.decision === 'put off') return [];
  const missing = [
    ...(visit.observationsBefore === undefined ? ['observations'] : []),
    ...(visit.checklist === undefined ? ['the checklist'] : []),
  ];
  return missing.map((what) => refusal('step-out-of-order', `Before that come ${what}.`, { remedy: `record ${what}` }));
}

type Found = {
  readonly verdict: Verdict;
  readonly troubles: readonly { verdict: Verdict; says: string }[];
  readonly protocolVersion: string;
};

function verdictToday(record: SubjectRecord, now: Surroundings): Found {
  const protocol = now.context === undefined ? undefined : protocolInForceOn(now.context.protocols, now.today);
  if (now.context === undefined || protocol === undefined) {
    return {
      verdict: 'cannot say',
      troubles: [{ verdict: 'cannot say', says: 'no protocol is in force at this unit' }],
      protocolVersion: 'none',
    };
  }
  const answer = goVerdict(record, now.context, now.today);
  const troubles = [...answer.requirements.map(({ verdict, cause }) => ({ verdict, says: cause })), ...answer.items]
    .filter(({ verdict }) => verdict === 'not ready' || verdict === 'cannot say')
    .map(({ verdict, says }) => ({ verdict, says }));
  // What was answered today and holds is a symptom too: said once.
  const once = [...new Map(troubles.map((trouble) => [`${trouble.verdict} ${trouble.says}`, trouble])).values()];
  return { verdict: answer.verdict, troubles: once, protocolVersion: protocol.version };
}

/** A go that was right when it was given is looked at once more when the medicine is about to run: a fact may have changed. */
export const checkStillReady = (record: SubjectRecord, now: Surroundings): readonly Refusal[] =>
  troublesAsRefusals(verdictToday(record, now));

function checkReady(visit: Visit, found: Found): readonly Refusal[] {
  if (visit.observationsBefore === undefined || visit.checklist === undefined) return [];
  return troublesAsRefusals(found);
}

/** No exception is made here: only an amended fact, a prescriber's recorded decision or a newly adopted protocol changes it. */
const troublesAsRefusals = (found: Found): readonly Refusal[] =>
  found.troubles.map(({ verdict, says }) =>
    verdict === 'not ready'
      ? refusal('not-ready', `Not ready: ${says}.`, { remedy: 'put the dose off with the reason, or ask a prescriber' })
      : refusal('cannot-say', `Cannot say: ${says}.`, { remedy: 'find it out, or ask a prescriber' }),
  );

function bodyOf(
  act: ActNamed<'decide'>,
  found: Found,
  record: SubjectRecord,
  now: Surroundings,
): Fact<'go-decision'>['body'] {
  const { decision, reasonCode, note, couldHaveBeenSeen, nextStep, nextBy, nextOwner, tellsThePatient } = act;
  const injection = decision === 'go' ? injectionToGive(record, now) : undefined;
  return {
    decision,
    ...(reasonCode === undefined ? {} : { reasonCode }),
    ...(note === undefined ? {} : { note }),
    ...(couldHaveBeenSeen === undefined ? {} : { couldHaveBeenSeen }),
    ...(nextStep === undefined ? {} : { nextStep }),
    ...(nextBy === undefined ? {} : { nextBy }),
    ...(nextOwner === undefined ? {} : { nextOwner }),
    ...(tellsThePatient === undefined ? {} : { tellsThePatient }),
    ...(injection === undefined ? {} : { injection }),
    basis: {
      on: plainDate(now.today),
      knownSeq: record.lastSeq,
      protocolVersion: found.protocolVersion,
      ruleSet: RULE_SET,
      verdict: found.verdict,
    },
  };
}
