/**
 * Sums with risks. All risks here are shares between 0 and 1.
 *
 * Time: a risk over some years becomes one over fewer or more years as if it were spread evenly (constant hazard):
 * 1 - (1 - p)^(to / from). Fleurence and Hollenbeak 2007 PharmacoEconomics 25:3; Sonnenberg and Beck 1993 Med Decis Making
 * 13:322 (both `from memory`; the formula stands in public tutorials of decision modelling, read). It is an assumption and is said as
 * one: after a fracture the first years are in truth the worst, and an instrument that allows for death gives slightly less.
 *
 * Effect: a hazard ratio acts on the rate (1 - (1 - p)^HR, proportional hazards), a risk ratio on the risk, an odds ratio on
 * the odds.
 */
import type { Interval } from './source.ts';

export type Measure = 'hazard ratio' | 'risk ratio' | 'odds ratio';

/** The same rate over another time. Throws on anything that is no risk or no time: callers have refused it before. */
export function overYears(risk: number, fromYears: number, toYears: number): number {
  assertShare(risk);
  if (!(fromYears > 0) || !(toYears > 0)) throw new RangeError('years must be more than 0');
  return fromYears === toYears ? risk : 1 - (1 - risk) ** (toYears / fromYears);
}

/** The risk that is left under a relative effect. */
export function underEffect(risk: number, measure: Measure, ratio: number): number {
  assertShare(risk);
  if (!(ratio >= 0)) throw new RangeError('a ratio is 0 or more');
  switch (measure) {
    case 'hazard ratio':
      return 1 - (1 - risk) ** ratio;
    case 'risk ratio':
      return Math.min(1, risk * ratio);
    case 'odds ratio': {
      const odds = (risk / (1 - risk)) * ratio;
      return odds / (1 + odds);
    }
  }
}

/**
 * Above this risk a hazard ratio near 1 would spare fewer the higher the risk: everybody breaks a bone sooner or later. Below
 * 1 - 1/e the absolute effect grows with the risk for every ratio under 1, so nothing is told above it.
 */
export const highestRiskTold = 1 - Math.exp(-1);

const z95 = 1.959_963_984_540_054;

/** Wilson's score interval for a share (Wilson 1927 J Am Stat Assoc 22:209; R `prop.test` without correction). */
export function wilson(events: number, people: number): Interval {
  const share = events / people;
  const square = z95 ** 2;
  const middle = share + square / (2 * people);
  const half = z95 * Math.sqrt((share * (1 - share)) / people + square / (4 * people ** 2));
  const whole = 1 + square / people;
  return { from: Math.max(0, (middle - half) / whole), to: Math.min(1, (middle + half) / whole) };
}

function assertShare(risk: number): void {
  if (!(risk >= 0 && risk < 1)) throw new RangeError('a risk lies between 0 and 1');
}
