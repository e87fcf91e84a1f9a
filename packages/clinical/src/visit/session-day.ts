/** A session on its day: opened, closed, handed over, as its own notes say. */
import { asWritten, newestWritten } from '../record/newest-written.ts';
import type { Fact, SubjectRecord } from '../record/patient-record.ts';

export type SessionDay = {
  readonly state: 'not opened' | 'open' | 'closed, handover waits' | 'closed';
  /** The newest word about who is here, kit and chairs. */
  readonly opened: Fact<'session-opened'> | undefined;
  /** Every opening since the session was last closed, in the order written; the last is `opened`. */
  readonly openings: readonly Fact<'session-opened'>[];
  readonly closed: Fact<'session-closed'> | undefined;
  readonly accepted: Fact<'handover-accepted'> | undefined;
};

export function sessionDayOf(session: SubjectRecord): SessionDay {
  const opened = newestWritten(session, 'session-opened');
  const lastClosed = newestWritten(session, 'session-closed');
  // Opened again after the closing: somebody came back.
  const closed = lastClosed !== undefined && lastClosed.seq > (opened?.seq ?? 0) ? lastClosed : undefined;
  const lastAccepted = newestWritten(session, 'handover-accepted');
  const accepted =
    closed !== undefined && lastAccepted !== undefined && lastAccepted.seq > closed.seq ? lastAccepted : undefined;
  const state =
    closed === undefined
      ? opened === undefined
        ? 'not opened'
        : 'open'
      : accepted === undefined
        ? 'closed, handover waits'
        : 'closed';
  const since = closed === undefined ? (lastClosed?.seq ?? 0) : 0;
  const openings = asWritten(session, 'session-opened').filter(({ seq }) => seq > since);
  return { state, opened, openings, closed, accepted };
}
