/**
 * The independent second check: another registered person reads pack, order and patient without seeing the first reading;
 * then the two are compared. A difference is recorded, not refused: it is what the check is for. The infusion is refused.
 */
import { subject } from '../ledger/subject.ts';
import { pumpMillilitersPerHour as pumpRate } from '../formulas/infusion-rate.ts';
import type { Fact } from '../record/patient-record.ts';
import { sessionDayOf } from '../visit/session-day.ts';
import { type Visit, isAbout, visitOn } from '../visit/visit.ts';
import type { ActNamed } from './act.ts';
import { checkCareGoesOn, checkKnown } from './check-care.ts';
import { fieldWrong } from './check-fields.ts';
import { draftNow } from './draft.ts';
import { checkNotExceptionAuthor } from './check-giver.ts';
import { asItHappened, checkHappenedAt } from './happened-at.ts';
import { WHOLE_DOSE_MILLILITERS } from './check-running-time.ts';
import { patientIn, sessionIn } from './ledgers.ts';
import { type Refusal } from './refusal.ts';
import { decided, refusal } from './refuse.ts';
import type { Decided, Surroundings } from './surroundings.ts';

export function decideSecondCheck(act: ActNamed<'second check'>, written: Surroundings): Decided {
  const now = asItHappened(act.happenedAt, written);
  const checker = act.signedOnPaperBy ?? now.by.staff;
  const record = patientIn(now, act.patient);
  const refusals: Refusal[] = [...checkKnown(record), ...checkCareGoesOn(record, undefined, now.today, now)];
  const visit = visitOn(record, now.today);
  if (visit === undefined)
    refusals.push(
      refusal('not-here', 'Nobody has recorded that this person arrived today.', {
        remedy: 'record the arrival first',
      }),
    );
  else if (visit.over) refusals.push(refusal('visit-over', 'They have gone home.'));
  const preparation = visit?.preparation;
  if (preparation === undefined || !isAbout(act.preparation, preparation)) {
    refusals.push(
      refusal('no-such-entry', 'That preparation is not in the notes of today.', {
        field: 'preparation',
        remedy: 'prepare first; the check reads the same pack',
      }),
    );
    return decided(refusals, () => []);
  }
  refusals.push(
    ...checkHappenedAt(act.happenedAt, [preparation], written),
    ...checkFromPaper(act),
    ...checkRateRead(preparation.body, act.reading),
  );
  if (preparation.author.staff === checker) {
    refusals.push(
      refusal('checker-is-preparer', 'You prepared this dose: another person makes the second check.', {
        remedy: 'ask another registered person to sign with their own name',
      }),
    );
  }
  refusals.push(...checkNotExceptionAuthor(record, 'makes the second check', now, checker));
  if (visit !== undefined && act.happenedAt === undefined) refusals.push(...checkNamed(visit, now));
  if (visit?.infusion !== undefined || visit?.dose !== undefined)
    refusals.push(
      refusal('step-already-done', visit.infusion === undefined ? 'The dose was given.' : 'The infusion was started.', {
        remedy: 'a check comes before the medicine',
      }),
    );
  else if (visit?.check !== undefined) {
    const remedy = visit.check.body.agrees
      ? 'withdraw it with the reason and check anew'
      : 'the readings differed: withdraw the preparation with the reason; it is prepared and checked anew';
    refusals.push(refusal('step-already-done', 'A second check of this preparation is in the notes.', { remedy }));
  }
  return decided(refusals, () => {
    const differs = differences(preparation.body, act.reading);
    return [
      draftNow(
        subject('patient', act.patient),
        'second-check',
        {
          ...act.reading,
          preparation: preparation.id,
          agrees: differs.length === 0,
          differs,
          clock: now.clock,
          ...(act.signedOnPaperBy === undefined ? {} : { signedOnPaperBy: act.signedOnPaperBy }),
        },
        now,
      ),
    ];
  });
}

/** A signature on paper is not proven here: it counts for what happened on paper, never for what is about to happen. */
const checkFromPaper = ({ signedOnPaperBy, happenedAt }: ActNamed<'second check'>): readonly Refusal[] =>
  signedOnPaperBy === undefined || happenedAt !== undefined
    ? []
    : [fieldWrong('happenedAt', 'a signature on paper, and no time', 'the time that stands on the day sheet')];

/** Where the session was opened, its opening names who may check. */
function checkNamed({ arrived }: Visit, now: Surroundings): readonly Refusal[] {
  const { opened } = sessionDayOf(sessionIn(now, arrived.body.session));
  return opened === undefined || opened.body.secondCheckers.includes(now.by.staff)
    ? []
    : [
        refusal('no-second-checker', 'You are not among the second checkers of this session.', {
          remedy: 'ask one of them, or write the opening anew with your name',
        }),
      ];
}

type Reading = ActNamed<'second check'>['reading'];

/** How fast a drip is to run is read off the pump; where none is used, the minutes are read off the order. */
function checkRateRead(
  first: Fact<'preparation'>['body'],
  { pumpMillilitersPerHour, minutes }: Reading,
): readonly Refusal[] {
  if (first.minutes === undefined) return [];
  if ((pumpMillilitersPerHour === undefined) !== (minutes === undefined)) return [];
  return [
    fieldWrong(
      'reading.pumpMillilitersPerHour',
      minutes === undefined ? 'nothing says how fast it is to run' : 'a pump rate and minutes are both given',
      'the rate on the pump, or the minutes if no pump is used',
    ),
  ];
}

/** The pump's whole or tenth of a millilitre below the exact rate is the same; faster is not. */
function runsAs(minutes: number, { pumpMillilitersPerHour, minutes: read }: Reading): boolean {
  if (pumpMillilitersPerHour === undefined) return read === minutes;
  const exact = pumpRate(WHOLE_DOSE_MILLILITERS, minutes);
  return pumpMillilitersPerHour <= exact && pumpMillilitersPerHour >= Math.floor(exact);
}

const LAST_SIGNS = 4;
/** What of a batch number is typed to compare two readings of it. */
export const lastSigns = (batch: string): string =>
  batch
    .replace(/[^A-Za-z0-9]/g, '')
    .toUpperCase()
    .slice(-LAST_SIGNS);

/** What the two readings do not share, in the words of the form. */
function differences(first: Fact<'preparation'>['body'], second: Reading): readonly string[] {
  return [
    ...(first.product === second.product ? [] : ['product']),
    ...(lastSigns(first.batch) === lastSigns(second.batchLastFour) ? [] : ['batch']),
    ...(first.expiresOn.slice(0, 7) === second.expiryMonth ? [] : ['expiry']),
    ...(first.minutes === undefined || runsAs(first.minutes, second)
      ? []
      : [second.pumpMillilitersPerHour === undefined ? 'minutes' : 'pump rate']),
  ];
}
