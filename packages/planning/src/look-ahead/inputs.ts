/** What is known of the coming years: counts read from the notes, rates a unit has seen, and what it offers. */

/** People whose next dose falls due in a week; week 0 is the one that begins today. */
export type DueGroup = {
  readonly week: number;
  /** 1 for a first dose of a course. */
  readonly dose: number;
  readonly people: number;
};

export type Arrivals = {
  /** People a week, on average over the year. */
  readonly perWeek: number;
  /** Weeks from hearing of a person to the week in which the first dose is due. */
  readonly lagWeeks: number;
};

export type DemandInputs = {
  /** People ready and waiting for a place today, by dose; the first number is for dose 1. */
  readonly waiting: readonly number[];
  readonly due: readonly DueGroup[];
  readonly referrals: Arrivals;
  /** Share of a year's referrals in each quarter that begins with week 0, times four: 1 is even. */
  readonly season: readonly [number, number, number, number];
  /** People who leave denosumab and need an infusion in its place. */
  readonly leavers: Arrivals;
  /** Pauses that end: counts by week, as for `due`, and the share that starts again. */
  readonly pausesEnding: readonly { readonly week: number; readonly people: number }[];
  readonly startsAgain: number;
  /** Doses of a course; weeks between them; weeks of pause after the last. */
  readonly doses: number;
  readonly intervalWeeks: number;
  readonly pauseWeeks: number;
  /** Of those alive: the share that comes back after dose 1, after dose 2, ... */
  readonly returns: readonly number[];
  /** Share that dies in the interval after dose 1, and in each later one. */
  readonly diesAfterFirst: number;
  readonly diesLater: number;
  /** How much was counted to know the rates: the less, the more the futures differ. Undefined: taken as exactly known. */
  readonly counted?: CountedFrom | undefined;
};

/** People or events behind each rate, what stands in for a short history among them. */
export type CountedFrom = {
  readonly referrals: number;
  readonly leavers: number;
  /** As `returns`. */
  readonly returns: readonly number[];
  readonly diesAfterFirst: number;
  readonly diesLater: number;
  readonly startsAgain: number;
};

export type Offer = {
  /** Visits there are places for in a week. */
  readonly placesPerWeek: number;
  /** Bloods drawn when the person is referred run out while they wait; drawn to fit the place they do not. */
  readonly bloods: { readonly drawn: 'at referral' | 'to fit the place'; readonly validWeeks: number };
};

/** Visits a week that the nurses' minutes allow: for what-ifs about sessions, nurses and the length of a visit. */
export const placesFrom = (
  sessionsPerWeek: number,
  nurseMinutesPerSession: number,
  nurseMinutesPerVisit: number,
): number => sessionsPerWeek * Math.floor(nurseMinutesPerSession / nurseMinutesPerVisit);
