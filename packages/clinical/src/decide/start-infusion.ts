/** The medicine begins to run: who it is, the go, the way in, the pack and its second check, the open session. */
import { MILLISECONDS_A_MINUTE, counted, plural } from '../kinds-texts/words.ts';
import { lineNotOnPaper } from '../kinds/infusion-started.ts';
import { subject } from '../ledger/subject.ts';
import { protocolInForceOn } from '../protocol/in-force.ts';
import type { Fact, SubjectRecord } from '../record/patient-record.ts';
import { keepsCompetences } from '../unit/competence.ts';
import { TYPED_IN_LATER, sinceCheck } from '../visit/running-time.ts';
import { sessionDayOf } from '../visit/session-day.ts';
import { sessionOf } from '../visit/session-list.ts';
import { type Visit, checkerOf, isFlushed, nothingGiven } from '../visit/visit.ts';
import type { ActNamed } from './act.ts';
import { atTheChair, stepOf } from './at-the-drip.ts';
import { fieldWrong } from './check-fields.ts';
import { checkInTheOpening } from './check-in-the-opening.ts';
import { checkPreparedStillGood } from './check-pack.ts';
import { checkVerified } from './check-pharmacy.ts';
import { checkLooked, lookAlong } from './check-looked.ts';
import { checkMinutes, notFlushed } from './check-visit-step.ts';
import { checkGiver } from './check-giver.ts';
import { checkStillReady } from './go.ts';
import { asItHappened, checkHappenedAt } from './happened-at.ts';
import { recordIn, sessionIn } from './ledgers.ts';
import { checkDripIsOrdered } from './ordered-medicine.ts';
import { openingLacks } from './opening-lacks.ts';
import { type Refusal } from './refusal.ts';
import { decided, refusal } from './refuse.ts';
import { lastSigns } from './second-check.ts';
import type { Decided, Surroundings } from './surroundings.ts';

export function decideStart(act: ActNamed<'start infusion'>, written: Surroundings): Decided {
  const now = asItHappened(act.happenedAt, written);
  const { record, visit, refusals } = atTheChair(act, now);
  if (visit !== undefined && !visit.over) refusals.push(...checkStart(record, visit, now));
  refusals.push(
    ...checkMinutes(act.plannedMinutes, 'plannedMinutes', now),
    ...checkMinutesAsChecked(act, visit),
    ...checkAskedAtTheChair(act),
    ...checkLineLookedAlong(act),
    ...checkInterrupted(act, visit, now),
    ...checkHappenedAt(act.happenedAt, [visit?.decision, visit?.cannula, visit?.flush, visit?.check], written),
  );
  return decided(refusals, () => [
    stepOf(
      act,
      'infusion-started',
      {
        plannedMinutes: act.plannedMinutes,
        ...(act.identifiers === undefined ? {} : { identifiers: act.identifiers }),
        alongTheLine: act.alongTheLine,
        ...(act.packAgain === undefined ? {} : { packAgain: act.packAgain }),
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

/** How fast it runs is part of what two people read: other minutes are prepared and checked anew. What ran on paper ran as it did. */
function checkMinutesAsChecked(
  { plannedMinutes, happenedAt }: ActNamed<'start infusion'>,
  visit: Visit | undefined,
): readonly Refusal[] {
  // Before the check agrees the minutes are the preparer's reading, and a refusal would tell it.
  const minutes = visit?.check?.body.agrees === true ? visit.preparation?.body.minutes : undefined;
  return minutes === undefined || minutes === plannedMinutes || happenedAt !== undefined
    ? []
    : [
        fieldWrong(
          'plannedMinutes',
          `it was prepared and checked to run in ${counted(minutes, 'minute')}`,
          'run it as it was checked; for another time withdraw the preparation, prepare it and let it be checked anew',
        ),
      ];
}

/**
 * Hazard 77: air, an unvented set, a line that runs freely. Whoever starts it now has looked; only of one that ran on paper may
 * the sheet be silent about it.
 */
function checkLineLookedAlong({ alongTheLine, happenedAt }: ActNamed<'start infusion'>): readonly Refusal[] {
  if (alongTheLine !== lineNotOnPaper) return checkLooked({ alongTheLine });
  return happenedAt === undefined
    ? [fieldWrong('alongTheLine', 'it starts now, at the chair: no paper can be silent about the line', lookAlong)]
    : [];
}

/** Hazard 56: too long after the second check the pack is read once more, and what is read is compared. */
function checkInterrupted(
  { packAgain }: ActNamed<'start infusion'>,
  visit: Visit | undefined,
  now: Surroundings,
): readonly Refusal[] {
  const { preparation } = visit ?? {};
  if (preparation === undefined || visit?.check === undefined || now.clock.boot === TYPED_IN_LATER) return [];
  if (packAgain !== undefined) {
    return packAgain.product === preparation.body.product &&
      lastSigns(packAgain.batchLastFour) === lastSigns(preparation.body.batch)
      ? []
      : [
          refusal('wrong-product', 'That is not the pack that was prepared and checked.', {
            field: 'packAgain',
            remedy: 'stop: find the checked pack, or withdraw the preparation and begin it anew',
          }),
        ];
  }
  const waited = waitedTooLong(visit, now);
  return waited === undefined
    ? []
    : [
        fieldWrong(
          'packAgain',
          waitedInWords(waited),
          'read product and batch off the pack once more, and ask who they are',
        ),
      ];
}

/** Whole minutes since the second check, where they are more than the protocol's or cannot be measured; one typed in later waited for nobody. */
export function waitedTooLong({ check }: Visit, now: Surroundings): number | 'cannot be measured' | undefined {
  const most =
    now.context === undefined
      ? undefined
      : protocolInForceOn(now.context.protocols, now.today)?.number.interruptionMinutes;
  if (most === undefined || check === undefined || now.clock.boot === TYPED_IN_LATER) return undefined;
  // One that was only typed in from paper is made anew anyway.
  if (check.body.signedOnPaperBy !== undefined) return undefined;
  const milliseconds = sinceCheck(check, now.clock);
  if (milliseconds === undefined) return 'cannot be measured';
  const waited = milliseconds / MILLISECONDS_A_MINUTE;
  return waited <= most ? undefined : Math.floor(waited);
}

export const waitedInWords = (waited: number | 'cannot be measured'): string =>
  waited === 'cannot be measured'
    ? 'how long ago the second check was cannot be measured: the clock was changed or the machine restarted'
    : `${waited} minutes went by since the second check`;

function checkStart(record: SubjectRecord, visit: Visit, now: Surroundings): readonly Refusal[] {
  if (visit.infusion !== undefined) {
    return [
      visit.infusion.finished === undefined
        ? refusal('already-running', 'The infusion was started.', { remedy: 'pause, resume or finish it' })
        : nothingGiven(visit)
          ? refusal('step-already-done', 'The drip was ended today before anything ran in.', {
              remedy: 'put the dose off with the reason; withdraw its end if it was a slip',
            })
          : refusal('step-already-done', 'The dose of today has been given.'),
    ];
  }
  const refusals: Refusal[] = [
    ...checkDripIsOrdered(record, now),
    ...checkVerified(record, now, false),
    ...checkSessionIsOpen(visit, now),
  ];
  const first = (says: string, remedy: string): void =>
    void refusals.push(refusal('step-out-of-order', says, { remedy }));
  if (visit.decision?.body.decision === 'go') refusals.push(...checkStillReady(record, now));
  else first('There is no decision to go.', 'finish observations and checklist, then decide');
  if (visit.cannula === undefined || visit.removed !== undefined) first('There is no cannula in place.', 'place one');
  else if (!isFlushed(visit.flush)) first(notFlushed.says, notFlushed.remedy);
  if (visit.preparation === undefined) first('No pack was prepared and read.', 'prepare it');
  else
    refusals.push(
      ...checkPreparedStillGood(visit.preparation, visit, now),
      ...checkChecked(visit, visit.preparation, now),
    );
  return [...refusals, ...checkInTheOpening(visit, now), ...checkGiver(record, now.today, now)];
}

/** Where the unit keeps competences, nothing runs before two registered people have opened the session. Hazard 35. */
export function checkSessionIsOpen({ arrived }: Visit, now: Surroundings): readonly Refusal[] {
  if (now.clock.boot === TYPED_IN_LATER) return [];
  const session = sessionIn(now, arrived.body.session);
  const unit = sessionOf(session)?.unit;
  if (unit === undefined || !keepsCompetences(recordIn(now, subject('unit', unit)))) return [];
  const { state, opened } = sessionDayOf(session);
  if (state !== 'open' || opened === undefined)
    return [
      refusal('session-not-open', 'The session is not open.', {
        remedy: 'open it: staff, second checkers, kit, chairs and packs',
      }),
    ];
  return openingLacks(opened.body, recordIn(now, subject('unit', unit)), now.today).map(({ name, says }) =>
    refusal(name, says, { remedy: 'put it right, then write the opening of the session anew' }),
  );
}

export function checkChecked(
  { check }: Visit,
  preparation: Fact<'preparation'>,
  now: Surroundings,
): readonly Refusal[] {
  if (check === undefined)
    return [
      refusal('step-out-of-order', 'The second check is missing.', {
        remedy: 'ask another registered person to check',
      }),
    ];
  const refusals: Refusal[] = [];
  if (check.body.signedOnPaperBy !== undefined && now.clock.boot !== TYPED_IN_LATER) {
    refusals.push(
      refusal('check-on-paper-only', 'The second check was typed in from paper: nobody has proven it here.', {
        remedy: 'withdraw it and let another registered person check and sign here, or type in when it ran',
      }),
    );
  }
  if (checkerOf(check) === preparation.author.staff) {
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
