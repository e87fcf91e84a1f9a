/** Chance from a seed: the same seed gives the same demo, on every machine. Never for anything but made-up people. */

export type Chance = {
  /** From 0 up to, not including, 1. */
  readonly next: () => number;
  /** A whole number between two, both included. */
  readonly between: (least: number, most: number) => number;
  readonly isTrue: (probability: number) => boolean;
  readonly oneOf: <Thing>(things: readonly [Thing, ...Thing[]]) => Thing;
  /** Roughly bell-shaped between two numbers: the mean of three. */
  readonly around: (least: number, most: number) => number;
};

/** A 32-bit counter scrambled by multiplication and shifts (the public-domain generator known as mulberry32). */
export function chanceFrom(seed: number): Chance {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const between = (least: number, most: number): number => least + Math.floor(next() * (most - least + 1));
  return {
    next,
    between,
    isTrue: (probability) => next() < probability,
    oneOf: (things) => things[between(0, things.length - 1)] ?? things[0],
    around: (least, most) => least + ((next() + next() + next()) / 3) * (most - least),
  };
}

/** A seed of its own for the n-th of many, so that one person's luck does not change another's. */
export const seedOf = (seed: number, n: number): number => Math.imul(seed ^ 0x9e3779b9, 2 * n + 1) >>> 0;
