/** Places on a list: taken, moved, given up. The session's notes and the patient's are written by one act. */
import { plainDate, shortDate } from '../calendar/day.ts';
import type { Draft } from '../ledger/entry.ts';
import { subject } from '../ledger/subject.ts';
import type { SubjectRecord } from '../record/patient-record.ts';
import { placeFrom } from '../visit/place.ts';
import { type SessionList, placeOf, sessionOf } from '../visit/session-list.ts';
import { visitOn } from '../visit/visit.ts';
import type { ActNamed } from './act.ts';
import { bookingTrouble } from './booking-trouble.ts';
import { checkCareGoesOn, checkKnown } from './check-care.ts';
import { fieldWrong } from './check-fields.ts';
import { checkPossible } from './check-standing.ts';
import { draftNow } from './draft.ts';
import { asItHappened, checkHappenedAt } from './happened-at.ts';
import { patientIn, sessionIn } from './ledgers.ts';
import { type Refusal } from './refusal.ts';
import { decided, notYours, refusal } from './refuse.ts';
import type { Decided, Surroundings } from './surroundings.ts';
import { mayAcceptTrouble } from './who-may.ts';

/** `happenedAt`: typed in from the day sheet, for somebody who came that day and was put on the list on paper. */
export function decideBook(act: ActNamed<'book'>, written: Surroundings): Decided {
  const now = asItHappened(act.happenedAt, written);
  const record = patientIn(now, act.patient);
  const session = sessionOf(sessionIn(now, act.session));
  const refusals = [...checkKnown(record), ...checkCareGoesOn(record, undefined, now.today, now)];
  if (session === undefined) return decided([...refusals, unknownSession('session')], () => []);
  refusals.push(...checkHappenedAt(act.happenedAt, [], written), ...checkPlace(session, act.place, now));
  if (act.happenedAt !== undefined && session.on !== now.today)
    refusals.push(fieldWrong('happenedAt', 'not the day of that session', 'the time on the sheet of that day'));
  if (record.lastSeq > 0) {
    refusals.push(
      ...checkPossible(record, 'place booked', now.today, now),
      ...checkNotBooked(record, session, act.patient, now),
      ...checkTrouble(record, session, act.accepts, now),
    );
  }
  return decided(refusals, () => taking(act.patient, session, act.place, act.accepts, now));
}

export function decideMove(act: ActNamed<'move'>, now: Surroundings): Decided {
  const record = patientIn(now, act.patient);
  const from = sessionOf(sessionIn(now, act.from));
  const to = sessionOf(sessionIn(now, act.to));
  const refusals = [...checkKnown(record), ...checkCareGoesOn(record, undefined, now.today, now)];
  if (from === undefined || to === undefined)
    return decided([...refusals, unknownSession(from === undefined ? 'from' : 'to')], () => []);
  refusals.push(...checkHolds(record, from, act.patient, now));
  const samePlace = from.id === to.id && placeOf(from, act.patient) === act.place;
  if (samePlace) refusals.push(refusal('already-booked', 'That is the place they have.', { field: 'place' }));
  else refusals.push(...checkPlace(to, act.place, now));
  if (record.lastSeq > 0) refusals.push(...checkTrouble(record, to, act.accepts, now));
  return decided(refusals, () => [
    ...leaving(act.patient, from, { reason: act.reason, askedBy: act.askedBy }, now),
    ...taking(act.patient, to, act.place, act.accepts, now),
  ]);
}

/** Also for someone who has died or left: the place is for the next person. */
export function decideGiveUp(act: ActNamed<'give up place'>, now: Surroundings): Decided {
  const record = patientIn(now, act.patient);
  const session = sessionOf(sessionIn(now, act.session));
  if (session === undefined) return decided([...checkKnown(record), unknownSession('session')], () => []);
  return decided([...checkKnown(record), ...checkHolds(record, session, act.patient, now)], () =>
    leaving(act.patient, session, { reason: act.reason, askedBy: act.askedBy }, now),
  );
}

export const unknownSession = (field: string): Refusal =>
  refusal('unknown-session', 'There is no such session.', { field, remedy: 'plan it first' });

function checkPlace(session: SessionList, place: number, now: Surroundings): readonly Refusal[] {
  const refusals: Refusal[] = [];
  if (session.cancelled !== undefined)
    refusals.push(
      refusal('session-cancelled', `That session was cancelled (${session.cancelled.reason}).`, {
        remedy: 'choose another',
      }),
    );
  if (session.on < now.today)
    refusals.push(
      refusal('session-past', `That session was on ${shortDate(session.on)}.`, { remedy: 'choose one to come' }),
    );
  if (place > session.arriveAt.length) {
    refusals.push(refusal('no-such-place', `The list has ${session.arriveAt.length} places.`, { field: 'place' }));
  } else if (session.taken.has(place)) {
    refusals.push(
      refusal('place-taken', `Place ${place} is someone else's.`, { field: 'place', remedy: 'choose a free one' }),
    );
  }
  return refusals;
}

/** One place at a time: a second one would be held from someone else. */
function checkNotBooked(
  record: SubjectRecord,
  session: SessionList,
  patient: string,
  now: Surroundings,
): readonly Refusal[] {
  const held = placeFrom(record, now.today);
  const gone = held !== undefined && held.on === now.today && visitOn(record, now.today)?.over === true;
  if (held !== undefined && !gone) {
    return [
      refusal('already-booked', `They have a place on ${shortDate(held.on)} at ${held.arriveAt}.`, {
        remedy: 'move that place instead',
      }),
    ];
  }
  return placeOf(session, patient) === undefined ? [] : [refusal('already-booked', 'They are on that list.')];
}

export function checkHolds(
  record: SubjectRecord,
  session: SessionList,
  patient: string,
  now: Surroundings,
): readonly Refusal[] {
  if (placeOf(session, patient) === undefined)
    return [refusal('not-booked-there', `They have no place on the list of ${shortDate(session.on)}.`)];
  if (session.on < now.today)
    return [refusal('session-past', `That session was on ${shortDate(session.on)}.`, { remedy: 'book another place' })];
  return visitOn(record, session.on) === undefined
    ? []
    : [
        refusal('already-here', 'They have arrived for that place.', {
          remedy: 'put the dose off instead, with the reason',
        }),
      ];
}

type Accepts = ActNamed<'book'>['accepts'];

function checkTrouble(
  record: SubjectRecord,
  session: SessionList,
  accepts: Accepts,
  now: Surroundings,
): readonly Refusal[] {
  if (accepts !== undefined && !mayAcceptTrouble(now.by.role)) {
    return [
      notYours(now.by.role, 'take on trouble on a list', ['nurse in charge', 'nurse', 'prescriber', 'pharmacist']),
    ];
  }
  if (session.on < now.today) return [];
  const trouble = bookingTrouble(record, now.context, now.today, session.on);
  const open = trouble.causes.filter(
    ({ cause, says }) => !(accepts?.causes ?? []).some((one) => one === cause || one === says),
  );
  if (open.length === 0) return [];
  const window = trouble.readiness?.window;
  const says =
    window === undefined
      ? `There is no window yet; on ${shortDate(session.on)} they would be ${trouble.headline}.`
      : `${shortDate(session.on)} lies outside the window (${shortDate(window.first)}${window.last === undefined ? ' on' : ` - ${shortDate(window.last)}`}).`;
  return [
    refusal('outside-the-window', says, {
      field: 'session',
      remedy: 'choose a session inside the window, or let a registered nurse take the trouble on by name',
    }),
    ...open.map(({ cause, verdict, says: because }) =>
      refusal('trouble-not-accepted', `On ${shortDate(session.on)} ${verdict}: ${because}.`, {
        field: cause,
        remedy: `name "${cause}" and the reason to book all the same`,
      }),
    ),
  ];
}

/** `told`: HH:MM where the person comes at another time than the list has for the place. */
export function taking(
  patient: string,
  session: SessionList,
  place: number,
  accepts: Accepts,
  now: Surroundings,
  told?: string,
): readonly Draft[] {
  const arriveAt = told ?? session.arriveAt[place - 1] ?? session.opensAt;
  const other = told === undefined ? {} : { arriveAt };
  return [
    draftNow(subject('session', session.id), 'session-place-taken', { place, patient, ...other }, now),
    draftNow(
      subject('patient', patient),
      'place-booked',
      {
        session: session.id,
        unit: session.unit,
        on: plainDate(session.on),
        arriveAt,
        place,
        ...(accepts === undefined ? {} : { accepted: accepts }),
      },
      now,
    ),
  ];
}

export function leaving(
  patient: string,
  session: SessionList,
  why: { reason: string; askedBy: 'the patient' | 'the unit' },
  now: Surroundings,
): readonly Draft[] {
  const place = placeOf(session, patient);
  if (place === undefined) throw new RangeError('a place that is not held cannot be given up');
  return [
    draftNow(subject('session', session.id), 'session-place-released', { place, patient, reason: why.reason }, now),
    draftNow(subject('patient', patient), 'place-given-up', { session: session.id, ...why }, now),
  ];
}
