/** The least that would make an impossible day possible: one kind of change at a time, each tried out by planning the day. */
import { type Day, ticksOfCare } from '../day/day.ts';
import { clockAt, minutesOf } from '../day/time-words.ts';
import type { Limit } from '../search/limit.ts';
import { planDay } from '../search/search.ts';
import { type Thing, allThings, fitsAlone, things, withMore } from './impossible.ts';

export type Remedy = {
  readonly says: string;
  /** The day with the change, for which a plan that sees everyone has been found. */
  readonly day: Day;
};

const mostMore = 3;
const mostLonger = 24;

type Seen = (day: Day) => boolean;

function moreOf(day: Day, thing: Thing, seesAll: Seen): Remedy[] {
  for (let count = 1; count <= mostMore; count += 1) {
    const changed = withMore(day, thing, count);
    if (!seesAll(changed)) continue;
    const { one, many } = things[thing];
    return [{ says: count === 1 ? `One more ${one} all day.` : `${count} more ${many} all day.`, day: changed }];
  }
  return [];
}

/** A visit's window opened by so much on the side that can give: later for who is brought, earlier or later for others. */
function longerWindows(day: Day, visits: readonly number[], seesAll: Seen): Remedy[] {
  for (let by = 1; by <= mostLonger; by += 1) {
    const opened = day.visits.map((visit, index) =>
      visits.includes(index) ? { ...visit, latest: Math.min(day.ticks, visit.latest + by) } : visit,
    );
    const changed = { ...day, visits: opened };
    if (!seesAll(changed)) continue;
    const names = visits.map(
      (index) => `${day.visits[index]?.name} may leave at ${clockAt(day, opened[index]?.latest ?? 0)}`,
    );
    return [{ says: `${names.join(', ')}: ${minutesOf(day, by)} later.`, day: changed }];
  }
  return [];
}

/** The whole day longer, with the staff of its last tick; only those held by the day's end itself may stay longer. */
function longerDay(day: Day, seesAll: Seen): Remedy[] {
  const last = day.ticks - 1;
  for (let by = 1; by <= mostLonger; by += 1) {
    const lengthened = allThings.reduce<Day>(
      (whole, thing) => ({
        ...whole,
        [thing]: [...day[thing], ...Array.from({ length: by }, () => day[thing][last] ?? 0)],
      }),
      day,
    );
    const visits = day.visits.map((visit) =>
      visit.latest >= day.ticks ? { ...visit, latest: day.ticks + by } : visit,
    );
    const changed = { ...lengthened, ticks: day.ticks + by, closes: day.closes + by, visits };
    if (seesAll(changed))
      return [{ says: `The day ends ${minutesOf(day, by)} later, at ${clockAt(day, day.closes + by)}.`, day: changed }];
  }
  return [];
}

function fewerPeople(day: Day, unseen: readonly number[]): Remedy[] {
  const visits = day.visits.filter((_, index) => !unseen.includes(index));
  const names = unseen.map((index) => day.visits[index]?.name ?? '');
  return [{ says: `Another day for ${names.join(', ')}.`, day: { ...day, visits } }];
}

/** `unseen` are those for whom the best plan found has no place. */
export function remediesFor(day: Day, unseen: readonly number[], seed: number, limit: Limit): Remedy[] {
  const seesAll: Seen = (changed) => {
    const isHopeless = changed.visits.some(
      (visit) =>
        Math.min(visit.latest, changed.ticks) - visit.earliest < ticksOfCare(visit) || !fitsAlone(changed, visit),
    );
    return !isHopeless && planDay(changed, { seed, limit }).objective.unseen === 0;
  };
  return [
    ...allThings.flatMap((thing) => moreOf(day, thing, seesAll)),
    ...longerWindows(day, unseen, seesAll),
    ...longerDay(day, seesAll),
    ...fewerPeople(day, unseen),
  ];
}
