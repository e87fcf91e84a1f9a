/** The session a person is at or has a place on today, and the unit that judges the visit: the one where they are. */
import { type SessionList, sessionOf, visitOn } from '@twelvemonth/clinical';
import type { AtHand } from '../at-hand.ts';
import type { Person } from '../register/people.ts';
import type { UnitNow } from '../register/units.ts';

export async function whereTheyAre(
  { notes, units }: Pick<AtHand, 'notes' | 'units'>,
  { record, today, place, unit }: Person,
): Promise<{ sessionId: string | undefined; session: SessionList | undefined; unit: UnitNow | undefined }> {
  const placeToday = place?.on === today ? place : undefined;
  const sessionId = visitOn(record, today)?.arrived.body.session ?? placeToday?.session;
  const session = sessionId === undefined ? undefined : sessionOf(await notes.of('session', sessionId));
  return {
    sessionId,
    session,
    unit: (session === undefined ? undefined : await units.named(session.unit)) ?? unit,
  };
}
