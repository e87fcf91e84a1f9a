/** Processor time, user and system of this whole process: what a busy machine does not blow up the way it does elapsed time. */

export type Timed<Result> = { readonly result: Result; readonly milliseconds: number };

const microsecondsPerMillisecond = 1_000;

export function processorMilliseconds(since?: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(since);
  return (user + system) / microsecondsPerMillisecond;
}

export function timed<Result>(work: () => Result): Timed<Result> {
  const began = process.cpuUsage();
  const result = work();
  return { result, milliseconds: processorMilliseconds(began) };
}

/** True once so many milliseconds of processor time have gone by since it was made. */
export function afterMilliseconds(budget: number): () => boolean {
  const began = process.cpuUsage();
  return () => processorMilliseconds(began) >= budget;
}

/** The shortest of some rounds, by the clock: for work too short for the resolution of processor time. */
export function shortestMilliseconds(rounds: number, work: (round: number) => unknown): number {
  let shortest = Number.POSITIVE_INFINITY;
  for (let round = 0; round < rounds; round += 1) {
    const began = performance.now();
    work(round);
    shortest = Math.min(shortest, performance.now() - began);
  }
  return shortest;
}
