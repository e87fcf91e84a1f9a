// Counts of people drawn for the coming years against distribution functions of another library. R is named in the plan for
// this; the values here were computed with SciPy 1.17.1 (scipy.stats binom, poisson, norm), whose definitions are the same.
import { describe, expect, it } from 'vitest';
import { type DemandInputs, type Offer, play, tooOldOnTheDay } from '../src/index.ts';

const nobody = { perWeek: 0, lagWeeks: 0 };
const quiet: DemandInputs = {
  waiting: [],
  due: [],
  referrals: nobody,
  season: [1, 1, 1, 1],
  leavers: nobody,
  pausesEnding: [],
  startsAgain: 0.5,
  doses: 3,
  intervalWeeks: 52,
  pauseWeeks: 104,
  returns: [0.7, 0.8],
  diesAfterFirst: 0.1,
  diesLater: 0.05,
};
const offer: Offer = { placesPerWeek: 1_000, bloods: { drawn: 'to fit the place', validWeeks: 12 } };
const runs = 20_000;

/** Demand of one week in each of many futures. */
const demandIn = (inputs: DemandInputs, week: number): number[] =>
  Array.from({ length: runs }, (_, run) => play(inputs, offer, week + 1, 7, run).demand[week]!);

/** How far a share of the futures lies from a probability, in standard errors. */
const errorsFrom = (probability: number, counts: readonly number[], most: number): number =>
  (counts.filter((count) => count <= most).length / runs - probability) /
  Math.sqrt((probability * (1 - probability)) / runs);

describe('who comes back', () => {
  // 40 people, each alive with 0.9 and then back with 0.7, a whole interval from now: binom.cdf(k, 40, 0.63).
  const counts = demandIn({ ...quiet, due: [{ week: 52, dose: 2, people: 40 }] }, 52);
  it.each([
    [20, 0.0636284821],
    [23, 0.2857546117],
    [25, 0.5333888538],
    [27, 0.7722356496],
    [30, 0.9620977196],
  ])('is at most %d of 40 as often as the binomial distribution has it', (most, probability) => {
    expect(Math.abs(errorsFrom(probability, counts, most))).toBeLessThan(3.5);
  });

  // binom.cdf(k, 40, 0.7): whose interval is over is known to be alive.
  it('is not counted as dead for an interval that is over', () => {
    const now = demandIn({ ...quiet, due: [{ week: 0, dose: 2, people: 40 }] }, 0);
    expect(Math.abs(errorsFrom(0.5593928961, now, 28))).toBeLessThan(3.5);
  });
});

describe('who is referred in a week', () => {
  // poisson.cdf(k, 4)
  const counts = demandIn({ ...quiet, referrals: { perWeek: 4, lagWeeks: 0 } }, 3);
  it.each([
    [1, 0.0915781944],
    [2, 0.2381033056],
    [4, 0.6288369352],
    [6, 0.8893260216],
    [8, 0.9786365655],
  ])('is at most %d as often as the Poisson distribution has it', (most, probability) => {
    expect(Math.abs(errorsFrom(probability, counts, most))).toBeLessThan(3.5);
  });
});

describe('bloods too old on the day', () => {
  // norm.sf(validity, wait, deviation)
  it.each([
    [6, 3, 8, 0.2524925375],
    [10, 4, 8, 0.6914624613],
    [10, 4, 12, 0.3085375387],
    [16, 5, 12, 0.7881446014],
    [26, 6, 12, 0.9901846714],
  ])('for a wait of %d ± %d weeks and %d weeks of validity', (wait, deviation, valid, share) => {
    expect(tooOldOnTheDay(wait, deviation, valid)).toBeCloseTo(share, 6);
  });
});
