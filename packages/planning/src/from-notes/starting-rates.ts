/**
 * Rates of a unit that has counted little yet: a starting value stands in and weighs as much as so many people counted. The
 * more the unit has counted itself, the less it weighs (shrinkage).
 */

/** A share with how many people stand behind it, the starting value's own among them. */
export type CountedShare = { readonly share: number; readonly counted: number };

/** As many people as a starting value weighs. A choice, no source. */
const weighsAs = 20;

export type StartingRates = {
  /** Of those alive: comes for dose 2, comes for each later dose. */
  readonly returnsForSecond: number;
  readonly returnsLater: number;
  /** Dies in the interval after dose 1, in each later one. */
  readonly diesAfterFirst: number;
  readonly diesLater: number;
  /** Of planned breaks that ended: begins again. */
  readonly startsAgain: number;
  /** Weeks from a referral until somebody is worked up. */
  readonly workUpWeeks: number;
};

export const startingRates: StartingRates = {
  returnsForSecond: 0.7,
  returnsLater: 0.8,
  diesAfterFirst: 0.1,
  diesLater: 0.05,
  startsAgain: 0.5,
  workUpWeeks: 4,
};

/** Where each comes from, to stand beside every figure made with it. */
export const sourcesOfStartingRates: Readonly<Record<keyof StartingRates, string>> = {
  returnsForSecond:
    'worked example of the trade (36 to 85 of 100 were seen: Osteoporos Int 2012;23:2329 and Medicare, PMC3355221)',
  returnsLater: 'worked example of the trade (70 to 90 of 100)',
  diesAfterFirst:
    'a choice between the 9.6 of 100 of a trial after hip fracture (NEJM 2007;357:1799, about two years) and the 20 to 30 of 100 told of the first year after one',
  diesLater: 'a choice, half of the year after the first; no source',
  startsAgain: 'a choice; no source',
  workUpWeeks: 'common practice, no source',
};

/** So many of so many, drawn towards the starting value. */
export const shrunk = (yes: number, of: number, starting: number): CountedShare => ({
  share: (yes + starting * weighsAs) / (of + weighsAs),
  counted: of + weighsAs,
});

/** A mean of so many values, drawn towards the starting value. */
export const shrunkMean = (mean: number, of: number, starting: number): number =>
  (mean * of + starting * weighsAs) / (of + weighsAs);

/** Referrals of each quarter as shares of an even year, times one: drawn towards even, as if so many more had come in each. */
export function shrunkSeason(counts: readonly [number, number, number, number]): [number, number, number, number] {
  const quarters = 4;
  const all = counts.reduce((sum, one) => sum + one, 0) + quarters * weighsAs;
  const factor = (count: number): number => ((count + weighsAs) / all) * quarters;
  return [factor(counts[0]), factor(counts[1]), factor(counts[2]), factor(counts[3])];
}
