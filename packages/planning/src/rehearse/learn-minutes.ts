/**
 * How long a step takes, from the unit's own timestamps and what was believed before: few observations move the belief a
 * little, many replace it. On the scale of logarithms, because minutes are never negative and some steps take very long.
 */

export type StepMinutes = { readonly mean: number; readonly spread: number };

/** The belief counts as so many observations. */
export function learnMinutes(prior: StepMinutes, observed: readonly number[], priorCounts: number): StepMinutes {
  const logs = observed.filter((minutes) => minutes > 0).map(Math.log);
  const count = logs.length;
  const priorLog = Math.log(prior.mean) - prior.spread ** 2 / 2;
  const own = count === 0 ? priorLog : logs.reduce((sum, one) => sum + one, 0) / count;
  const total = priorCounts + count;
  const centre = (priorCounts * priorLog + count * own) / total;
  // Squares about the common centre: within the observations, of the belief, and between the two.
  const within = logs.reduce((sum, one) => sum + (one - own) ** 2, 0);
  const between = ((priorCounts * count) / total) * (own - priorLog) ** 2;
  const variance = (priorCounts * prior.spread ** 2 + within + between) / total;
  return { mean: Math.exp(centre + variance / 2), spread: Math.sqrt(variance) };
}
