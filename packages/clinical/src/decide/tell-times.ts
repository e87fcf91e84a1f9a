/**
 * People on a list told another time of the same day: the list and their own notes say it, as a place given up and taken
 * again. Who has arrived is told nothing: what has begun stays.
 */
import type { Draft } from '../ledger/entry.ts';
import { asWritten } from '../record/newest-written.ts';
import { type SessionList, placeOf, sessionOf } from '../visit/session-list.ts';
import type { ActNamed } from './act.ts';
import { checkHolds, leaving, taking, unknownSession } from './book.ts';
import { checkCareGoesOn, checkKnown } from './check-care.ts';
import { fieldWrong } from './check-fields.ts';
import { patientIn, sessionIn } from './ledgers.ts';
import type { Refusal } from './refusal.ts';
import { decided, refusal } from './refuse.ts';
import type { Decided, Surroundings } from './surroundings.ts';

type Time = ActNamed<'tell times'>['times'][number];

export function decideTellTimes(act: ActNamed<'tell times'>, now: Surroundings): Decided {
  const session = sessionOf(sessionIn(now, act.session));
  if (session === undefined) return decided([unknownSession('session')], () => []);
  const refusals: Refusal[] = [];
  if (session.cancelled !== undefined)
    refusals.push(refusal('session-cancelled', `That session was cancelled (${session.cancelled.reason}).`));
  act.times.forEach((time, index) => refusals.push(...checkTime(time, `times.${index}`, session, act, now)));
  return decided(refusals, () => act.times.flatMap((time) => told(time, session, act.reason, now)));
}

function checkTime(
  { patient, arriveAt }: Time,
  field: string,
  session: SessionList,
  { times }: ActNamed<'tell times'>,
  now: Surroundings,
): readonly Refusal[] {
  const record = patientIn(now, patient);
  const place = placeOf(session, patient);
  const refusals = [
    ...checkKnown(record),
    ...checkCareGoesOn(record, undefined, now.today, now),
    ...checkHolds(record, session, patient, now),
  ];
  if (arriveAt < session.opensAt || arriveAt >= session.closesAt)
    refusals.push(
      fieldWrong(
        `${field}.arriveAt`,
        `${arriveAt} lies outside ${session.opensAt} - ${session.closesAt}`,
        'an arrival while the session is open',
      ),
    );
  if (place !== undefined && session.arriveAt[place - 1] === arriveAt)
    refusals.push(
      fieldWrong(`${field}.arriveAt`, `${arriveAt} is the time they have`, 'another time, or leave them out'),
    );
  if (times.filter((one) => one.patient === patient).length > 1)
    refusals.push(fieldWrong(`${field}.patient`, 'the same person is named twice', 'one time for each person'));
  return refusals;
}

function told({ patient, arriveAt }: Time, session: SessionList, reason: string, now: Surroundings): readonly Draft[] {
  const place = placeOf(session, patient);
  if (place === undefined) throw new RangeError('a place that is not held has no time');
  const before = asWritten(patientIn(now, patient), 'place-booked').findLast(({ body }) => body.session === session.id);
  return [
    ...leaving(patient, session, { reason, askedBy: 'the unit' }, now),
    // Trouble that was taken on with the place is still taken on.
    ...taking(patient, session, place, before?.body.accepted, now, arriveAt),
  ];
}
