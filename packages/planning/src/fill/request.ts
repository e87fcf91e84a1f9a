/**
 * What is to be filled: people with windows, sessions with minutes. A plain value; nothing is booked by it or by any answer
 * to it.
 */
import type { Day } from '@twelvemonth/clinical';

/** A kind of visit, with what it takes of a session. */
export type VisitKind = {
  readonly name: string;
  readonly nurseMinutes: number;
  readonly chairMinutes: number;
  /** Counts against the session's most first visits. */
  readonly isFirst: boolean;
};

/** How urgent, the most urgent first. People of a more urgent tier are never made to wait for those of a less urgent one. */
export type Tier = 0 | 1 | 2;

/** One end of a window with the sentence that explains it: "the bloods of 3 March are valid until 26 May". */
export type Edge = { readonly day: Day; readonly because: string };

/** What is known of the blood sample a visit needs; null where the visit needs none. */
export type BloodNeed = {
  /** The sample there is can be used until this day; null when there is none. */
  readonly usableUntil: Day | null;
  /** A new sample can be drawn from this day on. */
  readonly drawFrom: Day;
  /** Days from drawing to a result that has been looked at. */
  readonly daysToResult: number;
};

export type Waiting = {
  readonly name: string;
  /** Index into the kinds of visit. */
  readonly kind: number;
  readonly tier: Tier;
  readonly earliest: Edge;
  readonly latest: Edge;
  /** The day the visit is meant for; days after it count as late. */
  readonly due: Day;
  readonly bloods: BloodNeed | null;
  /** Weekdays preferred, Monday 1 to Sunday 7; empty when any will do. */
  readonly weekdays: readonly number[];
  /** Minutes of travel to each site the person has agreed to; a site that is not named is not offered. */
  readonly travelMinutes: Readonly<Record<string, number>>;
  /** The session the person has been told, by its index; null when none. */
  readonly told: number | null;
  /** Days of notice the person needs for a place that has come free. */
  readonly noticeDays: number;
  /** For the report on fairness; not used to choose. */
  readonly group?: string;
};

export type FillSession = {
  readonly day: Day;
  readonly site: string;
  readonly nurseMinutes: number;
  readonly chairMinutes: number;
  readonly mostFirstVisits: number;
  /** Visits there are places for, whatever their minutes; undefined: as many as the minutes allow. */
  readonly mostVisits?: number | undefined;
  /** Hundredths of the nurse and chair minutes that only people of the most urgent tier may have. */
  readonly reservedPercent: number;
};

/** What one choice is worth against days late, in days: the unit's settings, never literals of the planner. */
export type FillWeights = {
  readonly perDayLate: number;
  readonly perDayEarly: number;
  readonly otherWeekday: number;
  readonly perHourOfTravel: number;
  readonly anotherDraw: number;
  /** A place already told is moved only if the others gain more than this. */
  readonly moveTold: number;
  /** Not to have a place at all. At most `highestWeight`. */
  readonly noPlace: number;
};

export type FillRequest = {
  readonly today: Day;
  readonly kinds: readonly VisitKind[];
  readonly sessions: readonly FillSession[];
  readonly people: readonly Waiting[];
  readonly weights: FillWeights;
};

/** Starting values: common practice, no source. A unit sets its own. */
export const usualFillWeights: FillWeights = {
  perDayLate: 1,
  perDayEarly: 1,
  otherWeekday: 3,
  perHourOfTravel: 5,
  anotherDraw: 14,
  moveTold: 10,
  noPlace: 1_000,
};
