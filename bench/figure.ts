/** What a bench hands back. A file in this folder that exports `bench` is run by run.ts, which prints all figures in one table. */

import { processorMilliseconds } from './processor-time.ts';

export type Figure = {
  /** What was done, so that a person who has not read the code knows: "fold a ledger of 10,000 entries". */
  readonly what: string;
  readonly value: number;
  readonly unit: string;
  /** What it was measured beside, in the same run: a ratio says more than a time on an unknown machine. */
  readonly beside?: string;
};

export type Bench = () => Promise<readonly Figure[]>;

const rounds = 5;
const roundsOfProcessorTime = 7;

/**
 * Ours and others' alike: run by tens until the middle one of ten is hardly faster than that of the ten before, for until then it
 * is being compiled. By the middle one, because a single lucky round early on would end it too soon.
 */
const roundsAtATime = 10;
const FASTER = 0.98;

async function warmedUp(work: () => unknown): Promise<void> {
  let before = Number.POSITIVE_INFINITY;
  for (;;) {
    const taken: number[] = [];
    for (let round = 0; round < roundsAtATime; round += 1) {
      const began = process.cpuUsage();
      await work();
      taken.push(processorMilliseconds(began));
    }
    const middle = middleOf(taken);
    if (middle > before * FASTER) return;
    before = middle;
  }
}

const middleOf = (numbers: readonly number[]): number =>
  numbers.toSorted((a, b) => a - b)[numbers.length >> 1] ?? Number.NaN;

/** How many of what `work` does are done in a second of processor time: the median of seven rounds, once it is warm. */
export async function medianPerCpuSecond(count: number, work: () => unknown): Promise<number> {
  await warmedUp(work);
  const found: number[] = [];
  for (let round = 0; round < roundsOfProcessorTime; round += 1) {
    const began = process.cpuUsage();
    await work();
    found.push(count / (processorMilliseconds(began) / 1_000));
  }
  return middleOf(found);
}

/** The shortest of five rounds, in milliseconds: what the code costs when nothing else disturbs it. */
export async function bestMilliseconds(work: () => unknown): Promise<number> {
  let best = Number.POSITIVE_INFINITY;
  for (let round = 0; round < rounds; round += 1) {
    const began = performance.now();
    await work();
    best = Math.min(best, performance.now() - began);
  }
  return best;
}
