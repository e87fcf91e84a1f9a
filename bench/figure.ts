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

/** Ours and others' alike: run until so many rounds in a row brought none that was faster, for until then it is being compiled. */
const roundsWithoutFaster = 10;
const FASTER = 0.98;

async function warmedUp(work: () => unknown): Promise<void> {
  let fastest = Number.POSITIVE_INFINITY;
  for (let since = 0; since < roundsWithoutFaster; since += 1) {
    const began = process.cpuUsage();
    await work();
    const taken = processorMilliseconds(began);
    if (taken > fastest * FASTER) continue;
    fastest = taken;
    since = 0;
  }
}

/** How many of what `work` does are done in a second of processor time: the median of seven rounds, once it is warm. */
export async function medianPerCpuSecond(count: number, work: () => unknown): Promise<number> {
  await warmedUp(work);
  const found: number[] = [];
  for (let round = 0; round < roundsOfProcessorTime; round += 1) {
    const began = process.cpuUsage();
    await work();
    found.push(count / (processorMilliseconds(began) / 1_000));
  }
  return found.toSorted((a, b) => a - b)[roundsOfProcessorTime >> 1] ?? Number.NaN;
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
