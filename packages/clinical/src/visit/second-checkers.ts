/** Who may make the second check of what stands prepared. */
import type { StaffId } from '../ledger/entry.ts';
import { type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { sessionDayOf } from './session-day.ts';
import type { Visit } from './visit.ts';

/**
 * Whom the opening of the session names, without the preparer and whoever made an exception for this person. Undefined: nothing is
 * prepared, or nobody has opened the session and named anyone.
 */
export function secondCheckersFor(
  record: SubjectRecord,
  visit: Visit | undefined,
  session: SubjectRecord,
): readonly StaffId[] | undefined {
  const { opened } = sessionDayOf(session);
  const preparer = visit?.preparation?.author.staff;
  if (opened === undefined || preparer === undefined) return undefined;
  const excepted = new Set(factsOf(record, 'prescriber-exception').map(({ author }) => author.staff));
  return [...new Set(opened.body.secondCheckers)].filter((staff) => staff !== preparer && !excepted.has(staff));
}
