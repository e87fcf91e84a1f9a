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

/** A demo may live on another date; with a time, it begins at that time and runs on from there. */
export type DemoBeginning = { readonly at: string; readonly zone: string };

export function systemClock(demo?: DemoBeginning): Clock {
  const boot = bootId();
  // The machine's uptime in whole seconds is not fine enough for a running time; the process's own counter carries the rest.
  const uptimeAtStart = uptime() * 1000 - process.uptime() * 1000;
  const shift = demo === undefined ? 0 : shiftTo(demo);
  const instant = (): Temporal.Instant => Temporal.Now.instant().add({ milliseconds: shift });
  return {
    now: () => instant().toString({ smallestUnit: 'millisecond' }),
    reading: () => ({
      boot,
      uptimeMilliseconds: Math.max(0, Math.round(uptimeAtStart + process.uptime() * 1000)),
      wall: instant().toString({ smallestUnit: 'millisecond' }),
    }),
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
function shiftTo({ at, zone }: DemoBeginning): number {
  const real = Temporal.Now.zonedDateTimeISO(zone);
  const begins = at.includes('T')
    ? Temporal.PlainDateTime.from(at).toZonedDateTime(zone)
    : Temporal.PlainDate.from(at).toZonedDateTime({ timeZone: zone, plainTime: real.toPlainTime() });
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
