/** Who looks after whom in a session, as its notes say; only people on its list, and only nurses who were named as here. */
import { type Role, infusionNurses } from '../ledger/role.ts';
import type { StaffId } from '../ledger/entry.ts';
import { asWritten } from '../record/newest-written.ts';
import type { SubjectRecord } from '../record/patient-record.ts';
import { sessionDayOf } from './session-day.ts';

export type NamedNurse = {
  readonly nurse: StaffId;
  /** False: the session was opened anew since, without this nurse. Somebody else is to be named. */
  readonly isHere: boolean;
};

/** Nurses who are here, as the newest opening says. */
export function nursesHere(session: SubjectRecord): readonly StaffId[] {
  const present: readonly { staff: StaffId; role: Role }[] = sessionDayOf(session).opened?.body.present ?? [];
  return [...new Set(present.filter(({ role }) => infusionNurses.includes(role)).map(({ staff }) => staff))];
}

/** By patient id. The newest naming of each person counts. */
export function namedNursesOf(session: SubjectRecord): ReadonlyMap<string, NamedNurse> {
  const here = new Set(nursesHere(session));
  return new Map(
    asWritten(session, 'named-nurse')
      .toSorted((a, b) => a.seq - b.seq)
      .map(({ body }): [string, NamedNurse] => [body.patient, { nurse: body.nurse, isHere: here.has(body.nurse) }]),
  );
}
