/**
 * The only clock of the server. Three clocks are read together for running times: which boot of the machine this is, how
 * long it has been up, and the wall. Local dates and moments are made here, in the unit's zone.
 */
import { readFileSync } from 'node:fs';
import { uptime } from 'node:os';
import { type ClockReading, type Day, type Instant, type LocalMoment, day } from '@twelvemonth/clinical';

export type Clock = {
  /** Now, UTC, milliseconds. */
  readonly now: () => Instant;
  readonly reading: () => ClockReading;
  readonly local: (zone: string) => { readonly today: Day; readonly moment: LocalMoment };
};

/**
 * A demo lives in a time of its own: the local moment from which its clock goes on, and the clock that timed its infusions,
 * so that one begun in its story runs on. `aheadOfWall`: that clock's uptime less the wall, in milliseconds.
 */
export type OwnTime = {
  readonly at: string;
  readonly zone: string;
  readonly clock: { readonly boot: string; readonly aheadOfWall: number } | undefined;
};

/** The machine's own clock, also in a demo: what is outside the program goes by it. */
export const wallNow = (): Instant => Temporal.Now.instant().toString({ smallestUnit: 'millisecond' });

/** Two counters that a wall clock does not touch, in seconds: the machine's, and the finer one of this process. */
export type Counters = { readonly machine: () => number; readonly process: () => number };

const ownCounters: Counters = { machine: uptime, process: () => process.uptime() };

export function systemClock(own?: OwnTime, counters: Counters = ownCounters): Clock {
  const boot = bootId();
  // The machine's uptime may be told in whole seconds, which is not fine enough for a running time: the process's own counter
  // carries the rest. That one stands still while the machine sleeps; what ran went on.
  const uptimeAtStart = (counters.machine() - counters.process()) * 1000;
  const uptimeNow = (): number =>
    Math.max(0, Math.round(Math.max(uptimeAtStart + counters.process() * 1000, counters.machine() * 1000)));
  const shift = own === undefined ? 0 : shiftTo(own);
  const instant = (): Temporal.Instant => Temporal.Now.instant().add({ milliseconds: shift });
  // Of a demo the wall says how long its own clock has been up, once; from then on it is counted.
  const demoBegan = instant().epochMilliseconds - uptimeNow();
  return {
    now: () => instant().toString({ smallestUnit: 'millisecond' }),
    reading: () => {
      const now = instant();
      const wall = now.toString({ smallestUnit: 'millisecond' });
      if (own?.clock !== undefined) {
        return { boot: own.clock.boot, uptimeMilliseconds: demoBegan + uptimeNow() + own.clock.aheadOfWall, wall };
      }
      return { boot, uptimeMilliseconds: uptimeNow(), wall };
    },
    local: (zone) => {
      const local = instant().toZonedDateTimeISO(zone);
      return {
        today: day(local.toPlainDate().toString()),
        moment: local.toString({ timeZoneName: 'never', smallestUnit: 'millisecond' }),
      };
    },
  };
}

/** Milliseconds from the real now to the demo's. */
function shiftTo({ at, zone }: OwnTime): number {
  const real = Temporal.Now.zonedDateTimeISO(zone);
  const begins = Temporal.PlainDateTime.from(at).toZonedDateTime(zone);
  return begins.epochMilliseconds - real.epochMilliseconds;
}

/** Linux names each boot. Elsewhere a boot is told by this process alone: after a restart only the wall clock survives. */
function bootId(): string {
  try {
    return readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
  } catch {
    return `process-${process.pid}-${Math.round(process.hrtime()[0])}`;
  }
}

/** Zones this machine's time zone data cannot resolve: nothing may start with one of them. */
export function unknownZones(zones: readonly string[]): string[] {
  return zones.filter((zone) => {
    try {
      return Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(zone).timeZoneId === '';
    } catch {
      return true;
    }
  });
}

/** Milliseconds on a counter that never goes back: for measuring how long something took, and for short windows. */
export const steadyMilliseconds = (): number => performance.now();
