/** When the sessions of a year end: people come at the places' times, or at the times a plan of the day gives them. */
import type { Day, Visit } from '../day/day.ts';
import type { Plan } from '../plan/plan.ts';
import type { Chances } from '../rehearse/chances.ts';
import { rehearse } from '../rehearse/rehearse.ts';
import { planDay } from '../search/search.ts';

export type SessionEnds = {
  readonly sessions: number;
  /** Sessions that run past closing: each counts by the share of the days played. */
  readonly overruns: number;
  /** Minutes from coming to leaving, a person. */
  readonly meanStayMinutes: number;
};

export type Arranging = 'places in their order' | 'a plan of the day';

/** Tries of the search a session, and days each is played. */
const tries = 300;
const daysPlayed = 20;

/** A plan that says nothing but when people come. */
const arrivalsOnly = (day: Day, arriveAt: readonly number[]): Plan =>
  day.visits.map((_, index) => ({
    arrives: arriveAt[Math.min(index, arriveAt.length - 1)] ?? 0,
    starts: [],
    preparation: null,
    secondCheck: null,
    watchedIn: null,
  }));

export function sessionEnds(
  template: Day,
  sessions: readonly { readonly key: number; readonly visits: readonly Visit[] }[],
  {
    arranging,
    arriveAt,
    chances,
    seed,
  }: {
    readonly arranging: Arranging;
    /** Ticks at which the places of a session arrive. */
    readonly arriveAt: readonly number[];
    readonly chances: Chances;
    readonly seed: number;
  },
): SessionEnds {
  let [overruns, stays, people] = [0, 0, 0];
  for (const { key, visits } of sessions) {
    const day: Day = { ...template, visits };
    const plan =
      arranging === 'a plan of the day'
        ? planDay(day, { seed, limit: { iterations: tries } }).plan
        : arrivalsOnly(day, arriveAt);
    const found = rehearse(day, plan, chances, { seed: seed * 1_000 + key, days: daysPlayed });
    overruns += 1 - found.onTime;
    stays += found.stay.mean * visits.length;
    people += visits.length;
  }
  return { sessions: sessions.length, overruns, meanStayMinutes: people === 0 ? 0 : stays / people };
}
