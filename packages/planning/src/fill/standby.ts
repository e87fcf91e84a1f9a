/**
 * Who could have a place that has come free: ready that day, reachable in time, with bloods that hold, and with a later place
 * or none. One list in one act; nobody is moved by it.
 */
import type { Day } from '@twelvemonth/clinical';
import { whyNotOffered } from './cost.ts';
import type { FillRequest, Waiting } from './request.ts';

export type Standby = {
  readonly person: number;
  /** Days past the day the visit is meant for, on the day of the place; negative before it. */
  readonly daysPastDue: number;
  readonly travelMinutes: number;
  /** The session that would come free in turn, null when the person has none. */
  readonly from: number | null;
};

/** The sample there is must hold: there is no time for another. */
const hasBloodsFor = ({ bloods }: Waiting, on: Day): boolean =>
  bloods === null || (bloods.usableUntil !== null && bloods.usableUntil >= on);

/** Best first: the most urgent tier, then who is longest past due, then who lives nearest. */
export function standbyFor(request: FillRequest, sessionOf: readonly (number | null)[], session: number): Standby[] {
  const { sessions, people, today, kinds } = request;
  const place = sessions[session]!;
  const suits = (who: Waiting, index: number): boolean => {
    const has = sessionOf[index] ?? null;
    const hasLater = has === null || sessions[has]!.day > place.day;
    const isReachable = place.day - today >= who.noticeDays;
    const isKnown = kinds[who.kind] !== undefined;
    const isOffered = whyNotOffered(who, place) === undefined && hasBloodsFor(who, place.day);
    return hasLater && isReachable && isKnown && isOffered;
  };
  return people
    .map((who, person) => ({ who, person }))
    .filter(({ who, person }) => suits(who, person))
    .map(({ who, person }) => ({
      person,
      daysPastDue: place.day - who.due,
      travelMinutes: who.travelMinutes[place.site] ?? 0,
      from: sessionOf[person] ?? null,
    }))
    .toSorted(
      (a, b) =>
        people[a.person]!.tier - people[b.person]!.tier ||
        b.daysPastDue - a.daysPastDue ||
        a.travelMinutes - b.travelMinutes ||
        a.person - b.person,
    );
}
