/** Who looks after whom in a session, with names. */
import { type SubjectRecord, namedNursesOf, nursesHere } from '@twelvemonth/clinical';
import type { NamedNurseView, TodayView, VisitView } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';

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
  patient: string,
): Promise<Pick<VisitView, 'nurse' | 'nurses'>> {
  if (session === undefined) return { nurses: [] };
  const record = await notes.of('session', session);
  return { nurses: nursesOf(record, nameOf), ...nurseOf(record, patient, nameOf) };
}
