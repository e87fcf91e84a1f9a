/** What a process has used so far, read from the system while it runs. */
import { readFileSync } from 'node:fs';

/** Ticks of the clock in /proc: 100 a second on every Linux that Node runs on. */
const ticksPerSecond = 100;

export type Used = { readonly cpuSeconds: number; readonly peakMegabytes: number };

/** Undefined where the process has ended, or the system is no Linux. */
export function usedBy(pid: number | undefined): Used | undefined {
  try {
    // Fields 14 and 15 of stat, counted after the name in brackets: user and system time in ticks.
    const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]?.split(' ') ?? [];
    const peak = /VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
    if (peak === undefined) return undefined; // ended, and not yet forgotten by the system: its memory is already given back
    return {
      cpuSeconds: (Number(fields[11]) + Number(fields[12])) / ticksPerSecond,
      peakMegabytes: Number(peak) / 1_024,
    };
  } catch {
    return undefined; // it has just ended, or this is no Linux
  }
}
