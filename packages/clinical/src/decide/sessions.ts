/** Sessions: planned, planned anew, cancelled. */
import { day, shortDate } from '../calendar/day.ts';
import { subject } from '../ledger/subject.ts';
import { counted } from '../kinds-texts/words.ts';
import { unitOf } from '../unit/unit.ts';
import { plannedTimesOf, sessionOf } from '../visit/session-list.ts';
import type { SubjectRecord } from '../record/patient-record.ts';
import type { ActNamed } from './act.ts';
import { fieldWrong } from './check-fields.ts';
import { draftNow } from './draft.ts';
import { recordIn, sessionIn } from './ledgers.ts';
import { type Refusal } from './refusal.ts';
import { decided, refusal } from './refuse.ts';
import type { Decided, Surroundings } from './surroundings.ts';

export function decidePlanSession(act: ActNamed<'plan session'>, now: Surroundings): Decided {
  const { body } = act;
  const refusals: Refusal[] = [];
  if (unitOf(recordIn(now, subject('unit', body.unit))) === undefined) {
    refusals.push(
      refusal('unknown-unit', `No unit is called "${body.unit}".`, {
        field: 'body.unit',
        remedy: 'describe the unit in the settings first',
      }),
    );
  }
  if (day(body.on) < now.today)
    refusals.push(refusal('session-past', `${shortDate(day(body.on))} has passed.`, { field: 'body.on' }));
  refusals.push(...checkTimes(body), ...checkReplanned(sessionIn(now, act.session), body));
  return decided(refusals, () => [draftNow(subject('session', act.session), 'session-planned', body, now)]);
}

function checkTimes(body: ActNamed<'plan session'>['body']): readonly Refusal[] {
  const refusals: Refusal[] = [];
  if (body.opensAt >= body.closesAt)
    refusals.push(fieldWrong('body.closesAt', 'closes before it opens', 'a later time'));
  body.arriveAt.forEach((time, index) => {
    if (time < body.opensAt || time >= body.closesAt) {
      refusals.push(
        fieldWrong(
          `body.arriveAt.${index}`,
          `${time} lies outside ${body.opensAt} - ${body.closesAt}`,
          'an arrival while the session is open',
        ),
      );
    }
    const before = body.arriveAt[index - 1];
    if (before !== undefined && time < before) {
      refusals.push(fieldWrong(`body.arriveAt.${index}`, `${time} comes after ${before}`, 'arrival times in order'));
    }
  });
  return refusals;
}

/** A session keeps its unit and date, and every place that is taken. */
function checkReplanned(record: SubjectRecord, body: ActNamed<'plan session'>['body']): readonly Refusal[] {
  const session = sessionOf(record);
  const planned = plannedTimesOf(record);
  if (session === undefined) return [];
  const refusals: Refusal[] = [];
  if (session.unit !== body.unit)
    refusals.push(fieldWrong('body.unit', 'the session belongs to another unit', 'plan another session'));
  if (session.on !== day(body.on))
    refusals.push(fieldWrong('body.on', 'the session has another date', 'plan another session and move the places'));
  for (const [place] of session.taken) {
    if (place > body.arriveAt.length || (planned[place - 1] ?? '') !== (body.arriveAt[place - 1] ?? '')) {
      refusals.push(
        refusal('place-taken', `Place ${place} is taken: its arrival time stays as the patient was told.`, {
          field: 'body.arriveAt',
          remedy: 'move the place first',
        }),
      );
    }
  }
  return refusals;
}

export function decideCancelSession(act: ActNamed<'cancel session'>, now: Surroundings): Decided {
  const session = sessionOf(sessionIn(now, act.session));
  if (session === undefined)
    return decided([refusal('unknown-session', 'There is no such session.', { field: 'session' })], () => []);
  const refusals: Refusal[] = [];
  if (session.cancelled !== undefined) refusals.push(refusal('session-cancelled', 'It is cancelled already.'));
  if (session.on < now.today) refusals.push(refusal('session-past', `That session was on ${shortDate(session.on)}.`));
  if (session.taken.size > 0) {
    refusals.push(
      refusal('place-taken', `${counted(session.taken.size, 'person', 'people')} still on the list.`, {
        remedy: 'move or release every place first: each of them must hear of it',
      }),
    );
  }
  return decided(refusals, () => [
    draftNow(subject('session', act.session), 'session-cancelled', { reason: act.reason }, now),
  ]);
}
