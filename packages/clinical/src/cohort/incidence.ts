/**
 * How many of a group have come to each end by a day, where one end keeps the others from happening: the Aalen-Johansen
 * estimator of cumulative incidence (Aalen & Johansen 1978, Scand J Stat 5:141), and Kaplan-Meier (1958, JASA 53:457) for one
 * end alone, with Greenwood's variance and limits on the log scale, as R's `survfit` prints them by default.
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
};

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
    steps.push({ days: day, atRisk, free, share, ended });
  }
  return steps;
}

export type SurvivalStep = {
  readonly days: number;
  readonly atRisk: number;
  readonly events: number;
  readonly survival: number;
  /** Undefined where nobody is left. */
  readonly standardError: number | undefined;
  readonly lower: number | undefined;
  readonly upper: number | undefined;
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
    const known = survival > 0;
    const spread = Math.sqrt(greenwood);
    return {
      days: day,
      atRisk,
      events,
      survival,
      standardError: known ? survival * spread : undefined,
      lower: known ? survival * Math.exp(-NORMAL * spread) : undefined,
      upper: known ? Math.min(1, survival * Math.exp(NORMAL * spread)) : undefined,
    };
  });
}

/** The step that holds on a day; undefined before the first. */
export const stepOn = <Step extends { readonly days: number }>(
  steps: readonly Step[],
  days: number,
): Step | undefined => steps.findLast((step) => step.days <= days);
