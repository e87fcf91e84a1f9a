/** What is impossible about a day, visit by visit and in all, before and after a search has failed to see everyone. */
import { type Day, type Visit, ticksOfCare } from '../day/day.ts';
import { clockAt, minutesOf } from '../day/time-words.ts';
import { planAtOnce } from '../search/search.ts';
import { crowdedSays, tooMuchWork } from './too-much-work.ts';

export type Reason = {
  /** The visit it is about, null when it is about the day. */
  readonly visit: number | null;
  readonly says: string;
};

/** More of one thing, all day. */
export const things = {
  nurses: { one: 'nurse', many: 'nurses' },
  chairs: { one: 'chair', many: 'chairs' },
  watchPlaces: { one: 'watch place', many: 'watch places' },
  preparers: { one: 'person to prepare', many: 'people to prepare' },
  checkers: { one: 'second checker', many: 'second checkers' },
} as const;
export type Thing = keyof typeof things;
export const allThings: readonly Thing[] = ['nurses', 'chairs', 'watchPlaces', 'preparers', 'checkers'];

export const withMore = (day: Day, thing: Thing, count: number): Day => ({
  ...day,
  [thing]: Array.from({ length: day.ticks }, (_, tick) => (day[thing][tick] ?? 0) + count),
});

/** Whether a visit fits into the day if nobody else were there. */
export const fitsAlone = (day: Day, visit: Visit): boolean =>
  planAtOnce({ ...day, visits: [visit] }).objective.unseen === 0;

function aboutVisit(day: Day, visit: Visit, index: number): Reason[] {
  const room = Math.min(visit.latest, day.ticks) - visit.earliest;
  const care = ticksOfCare(visit);
  const between = `between ${clockAt(day, visit.earliest)} and ${clockAt(day, Math.min(visit.latest, day.ticks))}`;
  if (room < care)
    return [
      {
        visit: index,
        says: `${visit.name} needs ${minutesOf(day, care)} and has ${minutesOf(day, Math.max(0, room))} ${between}: ${minutesOf(day, care - room)} too few.`,
      },
    ];
  if (fitsAlone(day, visit)) return [];
  const lacking = allThings.filter((thing) => fitsAlone(withMore(day, thing, 1), visit));
  const found = lacking.map((thing) => things[thing].one);
  const says =
    found.length === 0
      ? `${visit.name} cannot be seen ${between}, even with nobody else there.`
      : `${visit.name} cannot be seen ${between}, even with nobody else there: no ${found.join(', or no ')} at the right time.`;
  return [{ visit: index, says }];
}

/** Reasons that need no search: each of them alone makes the day impossible. */
export const plainReasons = (day: Day): Reason[] => [
  ...day.visits.flatMap((visit, index) => aboutVisit(day, visit, index)),
  ...tooMuchWork(day).map((crowded) => ({ visit: null, says: crowdedSays(day, crowded) })),
];
