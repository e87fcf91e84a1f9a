/**
 * A clock that runs by itself and can be moved on: half an hour of an infusion passes when the test says so. Moving it moves
 * the wall and the machine's uptime together, as waiting would.
 */
import { type Clock, systemClock } from '../../apps/server/src/clock.ts';
import { day } from '../../packages/clinical/src/index.ts';

export type MovableClock = Clock & { readonly moveOn: (minutes: number) => void };

export function movableClock(at: string, zone = 'Europe/London'): MovableClock {
  const running = systemClock({ at, zone, clock: undefined });
  let movedMilliseconds = 0;
  const now = (): Temporal.Instant => Temporal.Instant.from(running.now()).add({ milliseconds: movedMilliseconds });
  return {
    now: () => now().toString({ smallestUnit: 'millisecond' }),
    reading: () => {
      const reading = running.reading();
      return {
        ...reading,
        uptimeMilliseconds: reading.uptimeMilliseconds + movedMilliseconds,
        wall: now().toString({ smallestUnit: 'millisecond' }),
      };
    },
    local: (inZone) => {
      const local = now().toZonedDateTimeISO(inZone);
      return {
        today: day(local.toPlainDate().toString()),
        moment: local.toString({ timeZoneName: 'never', smallestUnit: 'millisecond' }),
      };
    },
    moveOn: (minutes) => {
      movedMilliseconds += minutes * 60_000;
    },
  };
}
