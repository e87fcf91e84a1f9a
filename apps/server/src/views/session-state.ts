/** What holds a session that is open, and what earlier sessions left over. */
import {
  type Day,
  type SessionDay,
  type SessionList,
  type SubjectRecord,
  plainDate,
  sessionDayOf,
  whatHoldsStarts,
} from '@twelvemonth/clinical';
import type { TodayView } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import type { UnitNow } from '../register/units.ts';

/** Why nothing may be started in a session that is open. */
export const heldBy = ({ opened }: SessionDay, unit: SubjectRecord, on: Day): string[] =>
  opened === undefined ? [] : [...whatHoldsStarts(opened.body, unit, on)];

export async function heldToday(
  session: SubjectRecord,
  { unit, today }: UnitNow,
  { notes }: AtHand,
): Promise<string[]> {
  const said = sessionDayOf(session);
  return said.state === 'open' ? heldBy(said, await notes.of('unit', unit.id), today) : [];
}

/** What nobody closed or took on does not vanish with its day. */
export async function leftOverBefore(
  { today }: UnitNow,
  sessions: readonly SessionList[],
  { notes, accounts }: AtHand,
): Promise<TodayView['leftOver']> {
  const left: TodayView['leftOver'] = [];
  for (const { id, on } of sessions.filter((one) => one.on < today)) {
    const { state, closed } = sessionDayOf(await notes.of('session', id));
    if (state !== 'open' && state !== 'closed, handover waits') continue;
    const to = closed === undefined ? undefined : { staff: closed.body.to, name: accounts.nameOf(closed.body.to) };
    left.push({ session: id, on: plainDate(on), state, ...(to === undefined ? {} : { to }) });
  }
  return left;
}

/** Of several sessions of one day the first that nobody closed yet; once all are closed, the last. */
export async function shownOf<Session extends SessionList>(
  ofToday: readonly Session[],
  { notes }: AtHand,
): Promise<Session | undefined> {
  for (const session of ofToday)
    if (sessionDayOf(await notes.of('session', session.id)).closed === undefined) return session;
  return ofToday.at(-1);
}
