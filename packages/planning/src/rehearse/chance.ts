/**
 * Draws that depend on nothing but what they are for: seed, day rehearsed, visit and purpose. Two plans rehearsed with one seed
 * meet the same delays and the same slow steps (common random numbers), and every run can be made again, bit for bit.
 */

/** 32 random bits for a place in the rehearsal: a counter scrambled twice (the finaliser of MurmurHash3, public domain). */
export function bitsFor(stream: number, counter: number): number {
  let mixed = (stream + Math.imul(counter, 0x9e3779b9)) | 0;
  mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return (mixed ^ (mixed >>> 16)) >>> 0;
}

/** A stream for one rehearsed day of a seed. */
export const streamFor = (seed: number, day: number): number => bitsFor(bitsFor(seed | 0, 0x51ed27), day) | 0;

const indexBits = 12;
const cells = 2 ** indexBits;
const restBits = 32 - indexBits;
const rest = 2 ** restBits;
/** A power of two: to multiply by it gives the same bits as to divide, sooner. */
const perRest = 1 / rest;

/** A distribution as its quantiles at equal steps of probability; between them a straight line. */
export type Table = Float64Array;

export function tableOf(quantile: (probability: number) => number): Table {
  const table = new Float64Array(cells + 1);
  // The ends of an endless distribution are cut where half a cell of probability is left.
  for (let cell = 0; cell <= cells; cell += 1)
    table[cell] = quantile(Math.min(1 - 0.25 / cells, Math.max(0.25 / cells, cell / cells)));
  return table;
}

/** The same distribution stretched so that the mean of what is drawn from it is exactly `mean`. */
export function withMean(table: Table, mean: number): Table {
  let sum = 0;
  for (let cell = 0; cell < cells; cell += 1) sum += (table[cell]! + table[cell + 1]!) / 2;
  return table.map((value) => (value * mean * cells) / sum);
}

/** The value that these 32 bits stand for. */
export function valueIn(table: Table, bits: number): number {
  const cell = bits >>> restBits;
  const low = table[cell]!;
  return low + (table[cell + 1]! - low) * (bits & (rest - 1)) * perRest;
}

/** A probability as a threshold: bits below it mean yes. */
export const thresholdOf = (probability: number): number => Math.round(Math.min(1, Math.max(0, probability)) * 2 ** 32);
