/** Chance for the search: a seed, the same sequence on every machine. */

/** Numbers from 0 up to, not including, `below`. */
export type Draw = (below: number) => number;

/** A 32-bit counter scrambled by multiplication and shifts (the public-domain generator known as mulberry32). */
export function drawFrom(seed: number): Draw {
  let state = seed >>> 0;
  return (below) => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    // The upper 53 bits of a product of two 32-bit numbers would be lost below; a multiplication keeps the range exact.
    return Math.floor(((mixed ^ (mixed >>> 14)) >>> 0) * (below / 2 ** 32));
  };
}
