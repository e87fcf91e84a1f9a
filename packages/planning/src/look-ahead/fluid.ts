/** Waiting as a level that rises and falls: what comes in less what goes out, without any chance. */

export type Level = {
  readonly waiting: number;
  readonly demandPerWeek: number;
  readonly placesPerWeek: number;
};

/** Weeks that somebody who joins after so many weeks will wait; infinite when nobody is seen. */
export function waitAfter({ waiting, demandPerWeek, placesPerWeek }: Level, weeks: number): number {
  const left = Math.max(0, waiting + (demandPerWeek - placesPerWeek) * weeks);
  return left === 0 ? 0 : left / placesPerWeek;
}

/** Weeks by which the wait grows each week; negative when it shrinks. */
export const growthPerWeek = ({ demandPerWeek, placesPerWeek }: Level): number =>
  (demandPerWeek - placesPerWeek) / placesPerWeek;

export function trendSays(level: Level): string {
  const growth = growthPerWeek(level);
  if (growth > 0)
    return `More people come than there are places for: the wait grows by ${growth.toFixed(2)} weeks every week and never recovers.`;
  if (growth === 0) return 'As many people come as there are places for: the wait stays as it is and never recovers.';
  if (level.waiting < 1) return 'There are more places than people who need them: nobody waits.';
  return `The wait shrinks; nobody waits after ${goneAfter(level)}.`;
}

function goneAfter({ waiting, demandPerWeek, placesPerWeek }: Level): string {
  const weeks = Math.ceil(waiting / (placesPerWeek - demandPerWeek));
  return weeks === 1 ? '1 week' : `${weeks} weeks`;
}

/**
 * The same for where a stretch of time ends, with the demand of its last year: what is said of later weeks counts from that end,
 * not from today, and a wait that has grown is not called one that shrinks.
 */
export function trendAtEndSays(level: Level, waitingYearBefore: number): string {
  if (level.waiting < 1 || growthPerWeek(level) >= 0) return trendSays(level);
  const atEnd = waitOf(level);
  const later = `nobody would wait ${goneAfter(level)} after the end`;
  return level.waiting > waitingYearBefore
    ? `The wait grows in the last year looked at and is ${atEnd} at its end. That year as a whole has places enough: if the next were like it, ${later}.`
    : `The wait shrinks in the last year looked at and is ${atEnd} at its end; if it goes on so, ${later}.`;
}

/** More came in the last year than there are places for, and yet the wait has been falling: a burst, or a season. */
export const fallingAtEndSays = (level: Level): string =>
  `More people come in the last year looked at than there are places for, but for half a year the wait has been falling; it is ${waitOf(level)} at its end. A burst that is being worked off goes on falling; if the next year brings as many, the wait grows again.`;

const waitOf = ({ waiting, placesPerWeek }: Level): string => `${(waiting / placesPerWeek).toFixed(1)} weeks`;
