/**
 * Sessions filled with people: a proposal, never a booking. More urgent tiers first and never traded; how good it is at best;
 * each change to what people have been told, one by one, with what it gains.
 */
import { type InShares, allOf, partOf } from '../in-steps.ts';
import { daysFor, daysOfTier, daysWithoutPlace, problemsOf, tierWeight, whyNotOffered } from './cost.ts';
import { type Filling, fillingInSteps, sessionsOf } from './filling.ts';
import { keepsOnTie, problemFor } from './flatten.ts';
import { relaxedInSteps } from './relaxed.ts';
import type { FillRequest, Tier } from './request.ts';
import { costIfIn } from './what-if.ts';

export type TierResult = {
  readonly tier: Tier;
  readonly people: number;
  readonly withoutPlace: number;
  /** Days, as the weights count them. */
  readonly days: number;
  /** No filling that does as well for the more urgent tiers counts fewer days for this one. */
  readonly atLeast: number;
};

export type FillChange = {
  readonly person: number;
  /** Session told before and proposed now; null: none. */
  readonly from: number | null;
  readonly to: number | null;
  /**
   * For a place that was told and is moved: what all together would lose if it stayed, moving itself counted. No days: somebody
   * told has to move, and it could as well be another. Null when it cannot stay.
   */
  readonly gain: { readonly tier: number; readonly days: number } | null;
};

export type FillAnswer =
  | { readonly ok: false; readonly problems: readonly string[] }
  | {
      readonly ok: true;
      /** By person: the session proposed, null for who has none. */
      readonly session: readonly (number | null)[];
      readonly changes: readonly FillChange[];
      readonly tiers: readonly TierResult[];
      /** For the questions that may be asked about it. */
      readonly filling: Filling;
    };

/** Exchanges tried before the filling is taken as it is. */
const tries = 3_000;

const tiers: readonly Tier[] = [0, 1, 2];

function daysOf(request: FillRequest, person: number, session: number | null): number {
  const who = request.people[person]!;
  if (session === null) return daysWithoutPlace(who, request.weights);
  return daysFor(who, request.sessions[session]!, session, request.weights);
}

/** The bound of all tiers down to this one, less what the more urgent ones count in this filling. */
function* atLeastFor(request: FillRequest, tier: Tier, urgentDays: readonly number[]): InShares<number> {
  const people = request.people.filter((person) => person.tier <= tier);
  const { places, kind, options } = problemFor({ ...request, people });
  const bounds: number[] = [];
  for (const [resource, has] of places.has.entries()) {
    const use = Int32Array.from(kind, (own) => places.use[own]![resource]!);
    const relaxed = relaxedInSteps(options, use, has, places.sessions);
    const { bound } = yield* partOf(
      relaxed,
      bounds.length / places.has.length,
      (bounds.length + 1) / places.has.length,
    );
    bounds.push(bound);
  }
  const urgent = urgentDays.reduce((sum, days, index) => sum + days * tierWeight(index), 0);
  // Halves and thirds of days are no days; a little is given back for the rounding of large sums.
  return Math.max(0, Math.ceil((Math.max(...bounds) - urgent) / tierWeight(tier) - 1e-6));
}

function* tierResults(request: FillRequest, session: readonly (number | null)[]): InShares<TierResult[]> {
  const days = tiers.map((tier) =>
    request.people.reduce(
      (sum, person, index) => sum + (person.tier === tier ? daysOf(request, index, session[index]!) : 0),
      0,
    ),
  );
  const results: TierResult[] = [];
  for (const tier of tiers) {
    const own = [...request.people.keys()].filter((person) => request.people[person]!.tier === tier);
    const bound = atLeastFor(request, tier, days.slice(0, tier));
    results.push({
      tier,
      people: own.length,
      withoutPlace: own.filter((person) => session[person] === null).length,
      days: days[tier]!,
      atLeast: own.length === 0 ? 0 : yield* partOf(bound, tier / tiers.length, (tier + 1) / tiers.length),
    });
  }
  return results;
}

function changeOf(
  request: FillRequest,
  filling: Filling,
  person: number,
  from: number | null,
  to: number | null,
): FillChange {
  if (from === null) return { person, from, to, gain: null };
  const who = request.people[person]!;
  const stays = whyNotOffered(who, request.sessions[from]!) === undefined ? costIfIn(filling, person, from) : undefined;
  return { person, from, to, gain: stays === undefined ? null : daysOfTier(stays - filling.cost) };
}

export const fillSessions = (request: FillRequest): FillAnswer => allOf(fillInSteps(request));

/** The filling, and then its bounds by tier, which take about as long. Broken off, there is no answer: nothing has changed. */
const fillingShare = 0.5;

export function* fillInSteps(request: FillRequest): InShares<FillAnswer> {
  const problems = problemsOf(request);
  if (problems.length > 0) return { ok: false, problems };
  const filling = yield* partOf(fillingInSteps(problemFor(request, keepsOnTie), tries), 0, fillingShare);
  const none = request.sessions.length;
  const session = Array.from(sessionsOf(filling), (own) => (own === none ? null : own));
  const changes = session.flatMap((to, person) => {
    const from = request.people[person]!.told;
    return from === to ? [] : [changeOf(request, filling, person, from, to)];
  });
  const tierAnswers = yield* partOf(tierResults(request, session), fillingShare, 1);
  return { ok: true, session, changes, tiers: tierAnswers, filling };
}
