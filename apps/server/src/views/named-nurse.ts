/** Who looks after whom in a session and who checks whose preparation, with names. */
import {
  type SubjectRecord,
  type Visit,
  namedNursesOf,
  nursesHere,
  plural,
  secondCheckersFor,
} from '@twelvemonth/clinical';
import type { NamedNurseView, TodayView, VisitView } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import type { Person } from '../register/people.ts';

type NameOf = (staff: string) => string;

export const nursesOf = (session: SubjectRecord, nameOf: NameOf): TodayView['nurses'] =>
  nursesHere(session).map((staff) => ({ staff, name: nameOf(staff) }));

/** What a row says of the named nurse: nothing where nobody was named. */
export function nurseOf(
  session: SubjectRecord,
  patient: string,
  nameOf: NameOf,
): { readonly nurse: NamedNurseView } | Record<string, never> {
  const named = namedNursesOf(session).get(patient);
  return named === undefined ? {} : { nurse: { staff: named.nurse, name: nameOf(named.nurse), isHere: named.isHere } };
}

/** For the visit of somebody on the list of a session; somebody on no list has no named nurse. */
export async function nursesFor(
  { notes, accounts: { nameOf } }: Pick<AtHand, 'notes' | 'accounts'>,
  session: string | undefined,
  { patient, record }: Pick<Person, 'patient' | 'record'>,
  visit: Visit | undefined,
): Promise<Pick<VisitView, 'nurse' | 'nurses' | 'mayCheck'>> {
  if (session === undefined) return { nurses: [] };
  const notesOfSession = await notes.of('session', session);
  const mayCheck = secondCheckersFor(record, visit, notesOfSession)?.map(nameOf);
  return {
    nurses: nursesOf(notesOfSession, nameOf),
    ...nurseOf(notesOfSession, patient, nameOf),
    ...(mayCheck === undefined ? {} : { mayCheck }),
  };
}

/** Nobody looks about for a checker: who may check it stands beside it. */
export function byWhom(
  { record }: Pick<Person, 'record'>,
  visit: Visit,
  session: SubjectRecord | undefined,
  nameOf: NameOf,
): string {
  const who = session === undefined ? undefined : secondCheckersFor(record, visit, session);
  return who === undefined ? '' : who.length === 0 ? ': nobody who is named here may' : `: ${plural(who.map(nameOf))}`;
}
