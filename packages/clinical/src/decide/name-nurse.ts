/** A nurse looks after people of an open session: named, and named anew in one act whenever that changes. */
import { subject } from '../ledger/subject.ts';
import { nursesHere } from '../visit/named-nurse.ts';
import { sessionDayOf } from '../visit/session-day.ts';
import { placeOf, sessionOf } from '../visit/session-list.ts';
import type { ActNamed } from './act.ts';
import { draftNow } from './draft.ts';
import { sessionIn } from './ledgers.ts';
import type { Refusal } from './refusal.ts';
import { decided, refusal } from './refuse.ts';
import type { Decided, Surroundings } from './surroundings.ts';

export function decideNameNurse(act: ActNamed<'name nurse'>, now: Surroundings): Decided {
  const record = sessionIn(now, act.session);
  const session = sessionOf(record);
  if (session === undefined)
    return decided([refusal('unknown-session', 'There is no such session.', { field: 'session' })], () => []);
  const refusals: Refusal[] = [];
  if (sessionDayOf(record).state !== 'open')
    refusals.push(
      refusal('session-not-open', 'The session is not open: nobody is named as here.', {
        remedy: 'open the session first',
      }),
    );
  else if (!nursesHere(record).includes(act.nurse))
    refusals.push(
      refusal('field-wrong', 'That person is not here as a nurse, as the opening of the session says.', {
        field: 'nurse',
        remedy: 'name a nurse who is here, or write anew who is here',
      }),
    );
  act.patients.forEach((patient, index) => {
    if (placeOf(session, patient) === undefined)
      refusals.push(
        refusal('not-booked-there', 'That person is not on the list of this session.', { field: `patients.${index}` }),
      );
  });
  return decided(refusals, () =>
    [...new Set(act.patients)].map((patient) =>
      draftNow(subject('session', act.session), 'named-nurse', { patient, nurse: act.nurse }, now),
    ),
  );
}
