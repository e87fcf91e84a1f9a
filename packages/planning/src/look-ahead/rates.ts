/**
 * The rates of one future. A rate counted from a few people is not known exactly: each future has its own, drawn about what was
 * counted, so that the ranges are as wide as the history is short.
 */
import { bitsFor } from '../rehearse/chance.ts';
import { normalQuantile } from '../rehearse/normal.ts';
import type { Arrivals, DemandInputs } from './inputs.ts';

export type Rates = Pick<
  DemandInputs,
  'referrals' | 'leavers' | 'returns' | 'diesAfterFirst' | 'diesLater' | 'startsAgain'
>;

const within = (value: number): number => Math.min(1, Math.max(0, value));

/** As told where `counted` says nothing; else drawn by the normal approximation of binomial and Poisson counts. */
export function ratesOfFuture(told: DemandInputs, stream: number): Rates {
  const { referrals, leavers, returns, diesAfterFirst, diesLater, startsAgain, counted } = told;
  if (counted === undefined) return { referrals, leavers, returns, diesAfterFirst, diesLater, startsAgain };
  // Each rate has a place of its own: one that is told otherwise in a what-if leaves the draws of the others as they are.
  const drawn = (place: number): number => normalQuantile((bitsFor(stream, place) + 0.5) / 2 ** 32);
  const share = (value: number, people: number, place: number): number =>
    within(value + drawn(place) * Math.sqrt((value * (1 - value)) / (people + 1)));
  const arrivals = ({ perWeek, lagWeeks }: Arrivals, events: number, place: number): Arrivals => ({
    perWeek: perWeek * Math.max(0, 1 + drawn(place) / Math.sqrt(events + 1)),
    lagWeeks,
  });
  return {
    referrals: arrivals(referrals, counted.referrals, 1),
    leavers: arrivals(leavers, counted.leavers, 2),
    diesAfterFirst: share(diesAfterFirst, counted.diesAfterFirst, 3),
    diesLater: share(diesLater, counted.diesLater, 4),
    startsAgain: share(startsAgain, counted.startsAgain, 5),
    returns: returns.map((value, dose) => share(value, counted.returns[dose] ?? 0, 6 + dose)),
  };
}
