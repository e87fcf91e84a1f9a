/** The medicine running: started, paused, resumed, finished. The server's clocks are kept at each. */
import { MILLISECONDS_A_MINUTE, minutesAndSeconds, plural } from '../kinds-texts/words.ts';
import type { KindName } from '../kinds/index.ts';
import type { Draft } from '../ledger/entry.ts';
import { subject } from '../ledger/subject.ts';
import { protocolInForceOn } from '../protocol/in-force.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { keepsCompetences } from '../unit/competence.ts';
import { type RunningTime, TYPED_IN_LATER, runningTime } from '../visit/running-time.ts';
import { sessionDayOf } from '../visit/session-day.ts';
import { sessionOf } from '../visit/session-list.ts';
import { type Infusion, type Visit, visitOn } from '../visit/visit.ts';
import type { ActNamed } from './act.ts';
import { checkCareGoesOn, checkKnown } from './check-care.ts';
import { fieldWrong } from './check-fields.ts';
import { checkPreparedStillGood } from './check-pack.ts';
import { WHOLE_DOSE_MILLILITERS, checkRunningTime } from './check-running-time.ts';
import { checkMinutes } from './check-visit-step.ts';
import { draftNow } from './draft.ts';
import { checkNotExceptionAuthor } from './exception-author.ts';
import { checkStillReady } from './go.ts';
import { asItHappened, checkHappenedAt } from './happened-at.ts';
import { patientIn, recordIn, sessionIn } from './ledgers.ts';
import { checkDripIsOrdered } from './ordered-medicine.ts';
import { type Refusal } from './refusal.ts';
import { decided, refusal } from './refuse.ts';
import type { Decided, Surroundings } from './surroundings.ts';

type OfInfusion = ActNamed<'start infusion' | 'pause infusion' | 'resume infusion' | 'finish infusion'>;

/** What every act at the drip needs first: a person who is here and not gone. */
function atTheChair(
  act: OfInfusion,
  now: Surroundings,
): { record: SubjectRecord; visit: Visit | undefined; refusals: Refusal[] } {
  const record = patientIn(now, act.patient);
  const refusals = [...checkKnown(record), ...checkCareGoesOn(record, undefined, now.today, now)];
  const visit = visitOn(record, now.today);
  if (visit === undefined)
    refusals.push(
      refusal('not-here', 'Nobody has recorded that this person arrived today.', {
        remedy: 'record the arrival first',
      }),
    );
  else if (visit.over) refusals.push(refusal('visit-over', 'They have gone home.'));
  return { record, visit, refusals };
}

export function decideStart(act: ActNamed<'start infusion'>, written: Surroundings): Decided {
  const now = asItHappened(act.happenedAt, written);
  const { record, visit, refusals } = atTheChair(act, now);
  if (visit !== undefined && !visit.over) refusals.push(...checkStart(record, visit, now));
  refusals.push(
    ...checkMinutes(act.plannedMinutes, 'plannedMinutes', now),
    ...checkAskedAtTheChair(act),
    ...checkHappenedAt(act.happenedAt, [visit?.decision, visit?.check], written),
  );
  return decided(refusals, () => [
    stepOf(
      act,
      'infusion-started',
      {
        plannedMinutes: act.plannedMinutes,
        ...(act.identifiers === undefined ? {} : { identifiers: act.identifiers }),
        clock: now.clock,
      },
      now,
    ),
  ]);
}

/** Hazard 24: the right bag at the wrong chair. Asked once more of the person, before the line is connected. */
const checkAskedAtTheChair = ({ identifiers }: ActNamed<'start infusion'>): readonly Refusal[] =>
  identifiers === undefined
    ? [fieldWrong('identifiers', 'nobody was asked who they are at the chair', 'two identifiers, asked and matched')]
    : [];

function checkStart(record: SubjectRecord, visit: Visit, now: Surroundings): readonly Refusal[] {
  if (visit.infusion !== undefined) {
    return [
      visit.infusion.finished === undefined
        ? refusal('already-running', 'The infusion was started.', { remedy: 'pause, resume or finish it' })
        : refusal('step-already-done', 'The dose of today has been given.'),
    ];
  }
  const refusals: Refusal[] = [...checkDripIsOrdered(record, now), ...checkSessionIsOpen(visit, now)];
  const first = (says: string, remedy: string): void =>
    void refusals.push(refusal('step-out-of-order', says, { remedy }));
  if (visit.decision?.body.decision === 'go') refusals.push(...checkStillReady(record, now));
  else first('There is no decision to go.', 'finish observations and checklist, then decide');
  if (visit.cannula === undefined || visit.removed !== undefined) first('There is no cannula in place.', 'place one');
  else if (visit.flush?.body.ranFreely !== true)
    first('No flush has run freely through the cannula.', 'flush with saline and look at the site');
  if (visit.preparation === undefined) first('No pack was prepared and read.', 'prepare it');
  else refusals.push(...checkPreparedStillGood(visit.preparation, now), ...checkChecked(visit, visit.preparation));
  const prescription = factsOf(record, 'prescription').findLast((one) => one.on <= now.today);
  if (prescription?.author.staff === now.by.staff) {
    refusals.push(
      refusal('prescriber-may-not-give', 'You prescribed this dose: another person gives it.', {
        remedy: 'ask another nurse to start it in their own name',
      }),
    );
  }
  return [...refusals, ...checkNotExceptionAuthor(record, 'gives it', now)];
}

/** Where the unit keeps competences, nothing runs before two registered people have opened the session. Hazard 35. */
function checkSessionIsOpen({ arrived }: Visit, now: Surroundings): readonly Refusal[] {
  if (now.clock.boot === TYPED_IN_LATER) return [];
  const session = sessionIn(now, arrived.body.session);
  const unit = sessionOf(session)?.unit;
  if (unit === undefined || !keepsCompetences(recordIn(now, subject('unit', unit)))) return [];
  return sessionDayOf(session).state === 'open'
    ? []
    : [
        refusal('session-not-open', 'The session is not open.', {
          remedy: 'open it: staff, second checkers, kit, chairs and packs',
        }),
      ];
}

function checkChecked({ check }: Visit, preparation: Fact<'preparation'>): readonly Refusal[] {
  if (check === undefined)
    return [
      refusal('step-out-of-order', 'The second check is missing.', {
        remedy: 'ask another registered person to check',
      }),
    ];
  const refusals: Refusal[] = [];
  if (check.author.staff === preparation.author.staff) {
    refusals.push(
      refusal('checker-is-preparer', 'Preparer and checker are one person.', {
        remedy: 'ask another registered person to check',
      }),
    );
  }
  if (!check.body.agrees) {
    refusals.push(
      refusal('checks-differ', `The two readings differ: ${plural(check.body.differs, 'and')}.`, {
        remedy: 'read the pack again together; withdraw what was misread, then check anew',
      }),
    );
  }
  return refusals;
}

const notRunning = (says: string, remedy: string): Refusal => refusal('not-running', says, { remedy });

export function decidePause(act: ActNamed<'pause infusion'>, now: Surroundings): Decided {
  const { visit, refusals } = atTheChair(act, now);
  const infusion = visit?.infusion;
  if (infusion === undefined || infusion.finished !== undefined || infusion.paused !== undefined) {
    refusals.push(notRunning('Nothing is running.', 'only a running infusion is paused'));
  }
  return decided(refusals, () => [stepOf(act, 'infusion-paused', { reason: act.reason, clock: now.clock }, now)]);
}

export function decideResume(act: ActNamed<'resume infusion'>, now: Surroundings): Decided {
  const { visit, refusals } = atTheChair(act, now);
  const infusion = visit?.infusion;
  if (infusion === undefined || infusion.finished !== undefined)
    refusals.push(notRunning('Nothing is paused.', 'start the infusion first'));
  else if (infusion.paused === undefined) refusals.push(refusal('already-running', 'It is running.'));
  // A cannula placed again during the pause is a new way in: it is flushed like the first.
  if (visit?.infusion !== undefined && visit.flush?.body.ranFreely !== true) {
    refusals.push(
      refusal('step-out-of-order', 'No flush has run freely through the cannula.', {
        remedy: 'flush with saline and look at the site',
      }),
    );
  }
  return decided(refusals, () => [stepOf(act, 'infusion-resumed', { clock: now.clock }, now)]);
}

export function decideFinish(act: ActNamed<'finish infusion'>, written: Surroundings): Decided {
  const now = asItHappened(act.happenedAt, written);
  const { visit, refusals } = atTheChair(act, now);
  const infusion = visit?.infusion;
  if (visit === undefined || infusion === undefined || infusion.finished !== undefined) {
    return decided([...refusals, notRunning('Nothing is running.', 'only a running infusion is finished')], () => []);
  }
  if (act.milliliters > WHOLE_DOSE_MILLILITERS) {
    refusals.push(
      refusal('more-than-the-dose', `The bag holds ${WHOLE_DOSE_MILLILITERS} mL.`, { field: 'milliliters' }),
    );
  }
  refusals.push(...checkHappenedAt(act.happenedAt, [infusion.started], written));
  const ran = runningTime(infusion.marks, now.clock);
  refusals.push(...checkEnd(act, ran, infusion, now));
  return decided(refusals, () => ended(act, visit, ran, now));
}

function checkEnd(
  act: ActNamed<'finish infusion'>,
  ran: RunningTime,
  infusion: Infusion,
  now: Surroundings,
): readonly Refusal[] {
  const refusals: Refusal[] = [];
  const whole = act.milliliters >= WHOLE_DOSE_MILLILITERS;
  if (!whole && act.stoppedBecause === undefined) {
    refusals.push(
      fieldWrong('stoppedBecause', 'not the whole dose, and no reason', 'why it was stopped before the end'),
    );
  }
  if (!ran.measured) {
    if (act.timedBy === undefined) {
      refusals.push(
        refusal('cannot-be-measured', `${ran.says[0]?.toUpperCase() ?? ''}${ran.says.slice(1)}.`, {
          field: 'timedBy',
          remedy: 'say who timed it and by which clock',
        }),
      );
    }
    return [...refusals, ...checkTypedTimes(act, ran.byTypedTimes, now)];
  }
  const protocol = now.context === undefined ? undefined : protocolInForceOn(now.context.protocols, now.today);
  if (whole && protocol === undefined) {
    refusals.push(
      refusal('cannot-say', 'Without a protocol in force the shortest running time is not known.', {
        remedy: 'adopt a protocol',
      }),
    );
  }
  if (whole && protocol !== undefined) {
    const left = protocol.number.runningMinutesLeast * MILLISECONDS_A_MINUTE - ran.milliseconds;
    if (left > 0) {
      const paused = infusion.paused === undefined ? '' : ' (it is paused)';
      refusals.push(
        refusal(
          'too-early-to-finish',
          `It has run ${minutesAndSeconds(ran.milliseconds)}${paused}; ${minutesAndSeconds(left + 999)} are still to run.`,
          {
            field: 'milliliters',
            remedy: 'wait, or say how much was given and why it was stopped',
          },
        ),
      );
    }
  }
  return refusals;
}

/** By typed times it ran faster than the protocol lets it: asked about, and written only as an incident. */
function checkTypedTimes(
  { milliliters, incident }: ActNamed<'finish infusion'>,
  byTypedTimes: number | undefined,
  now: Surroundings,
): readonly Refusal[] {
  if (byTypedTimes === undefined) return [];
  return checkRunningTime(
    { milliliters, minutes: byTypedTimes / MILLISECONDS_A_MINUTE, says: minutesAndSeconds(byTypedTimes), incident },
    'incident',
    now,
  );
}

const SECONDS = 1000;

/** The end of the infusion, and the dose it makes. Nothing given is no dose. */
function ended(act: ActNamed<'finish infusion'>, visit: Visit, ran: RunningTime, now: Surroundings): readonly Draft[] {
  const seconds = ran.measured ? Math.floor(ran.milliseconds / SECONDS) : undefined;
  const milliseconds = ran.measured ? ran.milliseconds : ran.byTypedTimes;
  const finish = stepOf(
    act,
    'infusion-finished',
    {
      milliliters: act.milliliters,
      ...(seconds === undefined ? {} : { ranSeconds: seconds }),
      ...(act.stoppedBecause === undefined ? {} : { stoppedBecause: act.stoppedBecause }),
      ...(act.timedBy === undefined ? {} : { timedBy: act.timedBy }),
      clock: now.clock,
    },
    now,
  );
  if (act.milliliters === 0) return [finish];
  const dose = stepOf(
    act,
    'dose',
    {
      medicine: 'zoledronic acid 5 mg',
      setting: 'this service',
      ...(visit.preparation === undefined ? {} : { batch: visit.preparation.body.batch }),
      ...(act.milliliters < WHOLE_DOSE_MILLILITERS ? { partMilliliters: act.milliliters } : {}),
      ...(milliseconds === undefined ? {} : { minutes: Math.floor(milliseconds / MILLISECONDS_A_MINUTE) }),
      ...(act.incident === undefined ? {} : { incident: act.incident }),
    },
    now,
  );
  return [finish, dose];
}

const stepOf = <Kind extends KindName>(
  act: OfInfusion,
  kind: Kind,
  body: Fact<Kind>['body'],
  now: Surroundings,
): Draft => draftNow(subject('patient', act.patient), kind, body as never, now);
