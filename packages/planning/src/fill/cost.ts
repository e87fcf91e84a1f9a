/**
 * What a place costs a person, in days: late or early, an unwanted weekday, travel, another blood draw, another date than the
 * one told. Or why that session cannot be theirs.
 */
import { shortDate, weekday } from '@twelvemonth/clinical';
import type { FillRequest, FillSession, FillWeights, Waiting } from './request.ts';

const minutesPerHour = 60;

/** A sample drawn for the visit can be looked at by then, or the old one still holds. */
function drawsFor(person: Waiting, session: FillSession): 0 | 1 | undefined {
  const { bloods } = person;
  if (bloods === null || (bloods.usableUntil !== null && session.day <= bloods.usableUntil)) return 0;
  return bloods.drawFrom + bloods.daysToResult <= session.day ? 1 : undefined;
}

/** Why a session is not offered to a person, as a sentence; undefined when it is. */
export function whyNotOffered(person: Waiting, session: FillSession): string | undefined {
  const date = shortDate(session.day);
  if (session.day < person.earliest.day) return `${date} is too early: ${person.earliest.because}`;
  if (session.day > person.latest.day) return `${date} is too late: ${person.latest.because}`;
  if (person.travelMinutes[session.site] === undefined) return `${session.site} has not been agreed with the person`;
  if (drawsFor(person, session) === undefined) return `new bloods cannot be drawn and looked at by ${date}`;
  return undefined;
}

export const travelDays = (
  { travelMinutes }: Waiting,
  { site }: FillSession,
  { perHourOfTravel }: FillWeights,
): number => Math.round(((travelMinutes[site] ?? 0) / minutesPerHour) * perHourOfTravel);

/** Days, for a session that is offered. */
export function daysFor(person: Waiting, session: FillSession, index: number, weights: FillWeights): number {
  const late = Math.max(0, session.day - person.due) * weights.perDayLate;
  const early = Math.max(0, person.due - session.day) * weights.perDayEarly;
  const isWanted = person.weekdays.length === 0 || person.weekdays.includes(weekday(session.day));
  const travel = travelDays(person, session, weights);
  const draw = (drawsFor(person, session) ?? 0) * weights.anotherDraw;
  const moved = person.told === null || person.told === index ? 0 : weights.moveTold;
  return late + early + (isWanted ? 0 : weights.otherWeekday) + travel + draw + moved;
}

/** Days counted for having no place; who has been told one loses it as well. */
export const daysWithoutPlace = ({ told }: Waiting, { noPlace, moveTold }: FillWeights): number =>
  noPlace + (told === null ? 0 : moveTold);

/** One day of a tier is more than all that the less urgent can gain by one change (131,072 days). */
const tierStep = 2 ** 17;
const leastUrgent = 2;

export const tierWeight = (tier: number): number => tierStep ** (leastUrgent - tier);

/** A difference of costs as what it is: so many days of the most urgent tier it touches. */
export function daysOfTier(cost: number): { readonly tier: number; readonly days: number } {
  for (let tier = 0; tier < leastUrgent; tier += 1) {
    const days = Math.round(cost / tierWeight(tier));
    if (days !== 0) return { tier, days };
  }
  return { tier: leastUrgent, days: Math.round(cost) };
}

/** Above this a change could cost a more urgent tier what it saves many of a less urgent one. */
const highestWeight = 2_000;

/** What about the request cannot be worked with, all of it. */
export function problemsOf({ people, kinds, sessions, weights }: FillRequest): string[] {
  const heavy = Object.entries(weights)
    .filter(([, value]) => !Number.isInteger(value) || value < 0 || value > highestWeight)
    .map(([name]) => `${name} must be a whole number from 0 to ${highestWeight}`);
  const odd = people.flatMap((person) => {
    const says: string[] = [];
    if (kinds[person.kind] === undefined) says.push(`${person.name} has a kind of visit that is not listed`);
    if (person.told !== null && sessions[person.told] === undefined)
      says.push(`${person.name} was told a session that is not listed`);
    return says;
  });
  return [...heavy, ...odd];
}
