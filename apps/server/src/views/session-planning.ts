/** A session's list as a day to plan, for the screen that plans it: the same as the command reads. */
import { plainDate, protocolInForceOn, sessionOf } from '@twelvemonth/clinical';
import type { SessionPlanningView } from '@twelvemonth/exchange';
import { dayFromSession, visitSoFar } from '@twelvemonth/planning';
import type { AtHand } from '../at-hand.ts';
import { noProtocolInForce } from './person-row.ts';
import { byPatient, listedOn } from './sessions.ts';

export async function sessionPlanningViewOf(atHand: AtHand, id: string): Promise<SessionPlanningView | undefined> {
  const session = sessionOf(await atHand.notes.of('session', id));
  const at = session === undefined ? undefined : await atHand.units.named(session.unit);
  if (session === undefined || at === undefined) return undefined;
  const about = { session: id, unitName: at.unit.name, on: plainDate(session.on) };
  const nothing = (says: string): SessionPlanningView => ({ ...about, says, told: [], hasUsualSettings: false });
  const protocol = at.context === undefined ? undefined : protocolInForceOn(at.context.protocols, session.on);
  if (protocol === undefined) return nothing(noProtocolInForce);
  const people = byPatient(await atHand.people.all());
  const listed = listedOn(session, people).flatMap(({ person }) => (person === undefined ? [] : [person.record]));
  const made = dayFromSession(session, { unit: at.unit, protocol, listed });
  if (!made.ok) return nothing(made.says);
  const { day, told, hasUsualSettings } = made;
  const isToday = session.on === at.today;
  const time = at.moment.slice(11, 16);
  const now = { on: session.on, zone: at.unit.zone, time, clock: atHand.clock.reading() };
  return {
    ...about,
    day,
    told: [...told],
    hasUsualSettings,
    ...(isToday
      ? { today: { time, soFar: made.told.map(({ name }, index) => visitSoFar(name, listed[index]!, now)) } }
      : {}),
  };
}
