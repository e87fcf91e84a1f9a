/**
 * How many of a group have come to each end by a day, where one end keeps the others from happening: the Aalen-Johansen
 * estimator of cumulative incidence (Aalen & Johansen 1978, Scand J Stat 5:141), and Kaplan-Meier (1958, JASA 53:457) for one
 * end alone, with Greenwood's variance. The incidence has the infinitesimal jackknife's variance: each person's own influence on
 * the share, squared and added up (R package survival, help page of `survfit.formula`, "Robust variance"). Limits of 95
 * in 100 lie on the log scale. All of it as R's `survfit` prints by default.
 *
 * Taking the dead as if they might still have left (Kaplan-Meier with death censored) counts too many; the incidence beside
 * death does not. Whoever is still under way counts as long as they were seen: censored, not left out.
 */

/** One person: after so many days they came to an end, or were last seen without one. */
export type Observed<End extends string> = { readonly days: number; readonly end: End | 'still under way' };

export type IncidenceStep<End extends string> = {
  readonly days: number;
  /** Under way just before. */
  readonly atRisk: number;
  /** Share that has come to no end yet. */
  readonly free: number;
  /** Share that has come to each end. With `free` they make one. */
  readonly share: Readonly<Record<End, number>>;
  readonly ended: Readonly<Record<End, number>>;
  /** Limits of each share; undefined where nothing was seen that could tell them. */
  readonly limits: Readonly<Record<End, Limits | undefined>>;
};

export type Limits = { readonly standardError: number; readonly lower: number; readonly upper: number };

/** A step for each day on which somebody came to an end, ascending. Ends of a day come before those last seen on it. */
export function incidenceOf<End extends string>(
  observed: readonly Observed<End>[],
  ends: readonly End[],
): readonly IncidenceStep<End>[] {
  const zero = Object.fromEntries(ends.map((end) => [end, 0])) as Record<End, number>;
  const days = [...new Set(observed.filter(({ end }) => end !== 'still under way').map((one) => one.days))].toSorted(
    (a, b) => a - b,
  );
  const steps: IncidenceStep<End>[] = [];
  let influences = observed.map((): Influence<End> => ({ free: 0, share: zero }));
  let free = 1;
  let share: Record<End, number> = zero;
  for (const day of days) {
    const atRisk = observed.filter((one) => one.days >= day).length;
    const ended = { ...zero };
    for (const one of observed) if (one.days === day && one.end !== 'still under way') ended[one.end] += 1;
    const all = ends.reduce((sum, end) => sum + ended[end], 0);
    const before = free;
    share = Object.fromEntries(ends.map((end) => [end, share[end] + (before * ended[end]) / atRisk])) as Record<
      End,
      number
    >;
    free = before * (1 - all / atRisk);
    influences = influences.map((influence, index) =>
      influenceAfter(influence, observed[index], { ends, day, atRisk, ended, before }),
    );
    const limits = Object.fromEntries(
      ends.map((end) => [end, limitsOf(share[end], Math.hypot(...influences.map((one) => one.share[end])))]),
    ) as Record<End, Limits | undefined>;
    steps.push({ days: day, atRisk, free, share, ended, limits });
  }
  return steps;
}

/** How much one person has moved what came out. */
type Influence<End extends string> = { readonly free: number; readonly share: Readonly<Record<End, number>> };

/** What they have moved until now goes on with the others; on the day itself their own end stands against the end expected. */
function influenceAfter<End extends string>(
  { free, share }: Influence<End>,
  one: Observed<End> | undefined,
  {
    ends,
    day,
    atRisk,
    ended,
    before,
  }: {
    readonly ends: readonly End[];
    readonly day: number;
    readonly atRisk: number;
    readonly ended: Readonly<Record<End, number>>;
    readonly before: number;
  },
): Influence<End> {
  const isAtRisk = one !== undefined && one.days >= day;
  const moved = ends.map((end) => {
    const expected = ended[end] / atRisk;
    const surprise = isAtRisk ? Number(one.days === day && one.end === end) - expected : 0;
    return [end, free * expected + (before * surprise) / atRisk] as const;
  });
  return {
    free: free - moved.reduce((sum, [, by]) => sum + by, 0),
    share: Object.fromEntries(moved.map(([end, by]) => [end, share[end] + by])) as Record<End, number>,
  };
}

/** Below this a spread is what is left of rounding. */
const ROUNDING = 1e-12;

function limitsOf(share: number, standardError: number): Limits | undefined {
  if (share <= 0 || standardError < ROUNDING) return undefined;
  const spread = NORMAL * (standardError / share);
  return { standardError, lower: share * Math.exp(-spread), upper: Math.min(1, share * Math.exp(spread)) };
}

export type SurvivalStep = {
  readonly days: number;
  readonly atRisk: number;
  readonly events: number;
  readonly survival: number;
  /** Undefined where nobody is left. */
  readonly limits: Limits | undefined;
};

/** The 97.5th percentile of the normal distribution, for limits of 95 of 100. */
const NORMAL = 1.959_963_984_540_054;

export function kaplanMeier(
  observed: readonly { readonly days: number; readonly event: boolean }[],
): readonly SurvivalStep[] {
  const days = [...new Set(observed.filter(({ event }) => event).map((one) => one.days))].toSorted((a, b) => a - b);
  let survival = 1;
  let greenwood = 0;
  return days.map((day) => {
    const atRisk = observed.filter((one) => one.days >= day).length;
    const events = observed.filter((one) => one.days === day && one.event).length;
    survival *= 1 - events / atRisk;
    greenwood += events / (atRisk * (atRisk - events));
    return { days: day, atRisk, events, survival, limits: limitsOf(survival, survival * Math.sqrt(greenwood)) };
  });
}

/** The step that holds on a day; undefined before the first. */
export const stepOn = <Step extends { readonly days: number }>(
  steps: readonly Step[],
  days: number,
): Step | undefined => steps.findLast((step) => step.days <= days);
