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
  const weeks = Math.ceil(level.waiting / (level.placesPerWeek - level.demandPerWeek));
  return `The wait shrinks; nobody waits after ${weeks === 1 ? '1 week' : `${weeks} weeks`}.`;
}
