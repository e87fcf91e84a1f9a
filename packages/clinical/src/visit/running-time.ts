/**
 * How long an infusion has run. Only running time counts: paused minutes do not. At each start, pause, resume and finish
 * the server kept which boot of the machine it was, how long that had been up and what the wall clock said. Within one
 * boot the uptime decides, whatever was done to the wall clock. Across a restart only the wall clock survives, and only if
 * it did not run backwards and is not contradicted by the uptime of the new boot. Where nothing survives the time cannot be
 * measured: a person times it by another clock and says so. Of times typed in later the minutes between them are told.
 */
import type { ClockReading } from '../decide/surroundings.ts';
import type { BodyOfKind } from '../kinds/index.ts';
import type { Fact } from '../record/patient-record.ts';

type KeptReading = BodyOfKind<'infusion-started'>['clock'];

export type RunningTime =
  | { readonly measured: true; readonly milliseconds: number }
  | {
      readonly measured: false;
      readonly says: string;
      /** Where a time was typed in later: milliseconds between the times as they were typed, pauses left out. */
      readonly byTypedTimes: number | undefined;
    };

/** In place of a boot: the time was typed in later, and no clock of ours stands behind it. */
export const TYPED_IN_LATER = 'typed in later';

/** Milliseconds between two readings. Undefined: no clock survived. */
function between(from: KeptReading, until: KeptReading): number | undefined {
  if (from.boot === TYPED_IN_LATER || until.boot === TYPED_IN_LATER) return undefined;
  const wall = Date.parse(until.wall) - Date.parse(from.wall);
  if (from.boot === until.boot) {
    const up = until.uptimeMilliseconds - from.uptimeMilliseconds;
    return up >= 0 ? up : undefined;
  }
  // The new boot began after `from`, so at least its uptime has passed: a wall clock that says less was put back.
  return wall >= until.uptimeMilliseconds ? wall : undefined;
}

/**
 * Milliseconds since the second check. Undefined: cannot be measured, and what rests on it is asked again. Too few would pass an
 * interruption by, so a wall clock is never enough: it may have been put back, and says then that less has passed.
 */
export function sinceCheck({ body }: Fact<'second-check'>, now: ClockReading): number | undefined {
  return body.clock?.boot === now.boot ? between(body.clock, now) : undefined;
}

export type ClockMark = { readonly what: 'started' | 'paused' | 'resumed'; readonly clock: KeptReading };

/** Running time from the first mark to `until`, pauses left out. Marks in order: started, then paused and resumed in turn. */
export function runningTime(marks: readonly ClockMark[], until: ClockReading): RunningTime {
  let milliseconds = 0;
  let runningSince: KeptReading | undefined;
  for (const mark of [...marks, { what: 'until', clock: until } as const]) {
    if (runningSince !== undefined) {
      const stretch = between(runningSince, mark.clock);
      if (stretch === undefined) {
        return {
          measured: false,
          says: 'the running time cannot be measured: a time was typed in later, the clocks were changed or the machine restarted',
          byTypedTimes: betweenTypedTimes(marks, until),
        };
      }
      milliseconds += stretch;
    }
    runningSince = mark.what === 'paused' || mark.what === 'until' ? undefined : mark.clock;
  }
  return { measured: true, milliseconds };
}

/** Times that contradict each other leave no minutes between them: nought, never an unknown that passes. */
function betweenTypedTimes(marks: readonly ClockMark[], until: ClockReading): number | undefined {
  if (until.boot !== TYPED_IN_LATER && marks.every(({ clock }) => clock.boot !== TYPED_IN_LATER)) return undefined;
  let milliseconds = 0;
  let runningSince: number | undefined;
  for (const { what, clock } of [...marks, { what: 'until', clock: until } as const]) {
    const wall = Date.parse(clock.wall);
    if (runningSince !== undefined) {
      if (wall < runningSince) return 0;
      milliseconds += wall - runningSince;
    }
    runningSince = what === 'paused' || what === 'until' ? undefined : wall;
  }
  return milliseconds;
}
