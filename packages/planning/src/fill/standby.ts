/**
 * Who could have a place that has come free: ready that day, reachable in time, with bloods that hold, and with a later place
 * or none. One list in one act; nobody is moved by it.
 */
import { type Day, weekday } from '@twelvemonth/clinical';
import { travelDays, whyNotOffered } from './cost.ts';
import type { FillRequest, FillSession, FillWeights, Waiting } from './request.ts';

export type Standby = {
  readonly person: number;
  /** Days past the day the visit is meant for, on the day of the place; negative before it. */
  readonly daysPastDue: number;
  readonly travelMinutes: number;
  /** What was weighed within the tier, in days, as a sentence: past due, the weekday, the way there. */
  readonly because: string;
  /** The session that would come free in turn, null when the person has none. */
  readonly from: number | null;
};

/** The sample there is must hold: there is no time for another. */
const hasBloodsFor = ({ bloods }: Waiting, on: Day): boolean =>
  bloods === null || (bloods.usableUntil !== null && bloods.usableUntil >= on);

const daysText = (days: number): string => `${days} ${days === 1 ? 'day' : 'days'}`;

type Weighed = { readonly days: number; readonly because: string };

/** Days past due, less what an unwanted weekday and the way there count: the same days that the filling itself reckons with. */
function weighed(who: Waiting, place: FillSession, weights: FillWeights): Weighed {
  const daysPastDue = place.day - who.due;
  const minutes = who.travelMinutes[place.site] ?? 0;
  const forTravel = travelDays(who, place, weights);
  const isWanted = who.weekdays.length === 0 || who.weekdays.includes(weekday(place.day));
  const forWeekday = isWanted ? 0 : weights.otherWeekday;
  const days = daysPastDue - forTravel - forWeekday;
  const due =
    daysPastDue === 0
      ? 'due on that day'
      : daysPastDue > 0
        ? `${daysText(daysPastDue)} past due`
        : `${daysText(-daysPastDue)} before it is due`;
  const less = [
    ...(isWanted ? [] : [`less ${forWeekday} for a weekday they would rather not have`]),
    ...(forTravel === 0 ? [] : [`less ${forTravel} for ${minutes} minutes of travel`]),
  ];
  const wanted = who.weekdays.length > 0 && isWanted ? ['a weekday they prefer'] : [];
  const sum = less.length === 0 ? [] : [`counts as ${daysText(days)}`];
  return { days, because: [due, ...wanted, ...less, ...sum].join(', ') };
}

/** Best first: the most urgent tier, then who is longest past due, less what the weekday and the way there count. */
export function standbyFor(request: FillRequest, sessionOf: readonly (number | null)[], session: number): Standby[] {
  const { sessions, people, today, kinds, weights } = request;
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
    .map((who, person) => ({ who, person, ...weighed(who, place, weights) }))
    .filter(({ who, person }) => suits(who, person))
    .toSorted(
      (a, b) =>
        a.who.tier - b.who.tier ||
        b.days - a.days ||
        (a.who.travelMinutes[place.site] ?? 0) - (b.who.travelMinutes[place.site] ?? 0) ||
        a.person - b.person,
    )
    .map(({ who, person, because }) => ({
      person,
      daysPastDue: place.day - who.due,
      travelMinutes: who.travelMinutes[place.site] ?? 0,
      because,
      from: sessionOf[person] ?? null,
    }));
}
