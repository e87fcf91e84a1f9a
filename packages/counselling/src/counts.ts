/** Shares as whole people out of one number, both ways: how many have it and how many do not. */
export type OutOf = 100 | 1000 | 10_000;

export type BothWays = { readonly have: number; readonly haveNot: number };

export const bothWays = (share: number, of: OutOf): BothWays => {
  const have = Math.round(share * of);
  return { have, haveNot: of - have };
};

/**
 * A hundred where every difference is at least two in a hundred, else a thousand, so that a difference and its range can be
 * counted in people. One number for the whole sheet, so that nobody compares 1 in 20 with 1 in 90.
 */
export const outOfFor = (differences: readonly number[]): OutOf =>
  differences.every((difference) => Math.abs(difference) * 100 >= 2) ? 100 : 1000;

/** "1,000": digits in groups, the same in every language variant we have. */
export const numberText = (value: number): string => String(value).replace(/\B(?=(\d{3})+$)/g, ',');
