/** A running infusion as screens show it, reckoned on the server's clocks. */
import { type ClockReading, type Protocol, type Visit, runningTime } from '@twelvemonth/clinical';
import type { VisitView } from '@twelvemonth/exchange';

const MILLISECONDS_A_MINUTE = 60_000;

export function infusionViewOf(
  visit: Visit | undefined,
  protocol: Protocol | undefined,
  now: ClockReading,
): VisitView['infusion'] {
  const infusion = visit?.infusion;
  if (infusion === undefined) return undefined;
  const { started, finished, paused, marks } = infusion;
  const least = protocol?.number.runningMinutesLeast;
  const startedAt = started.at ?? started.recordedAt;
  const common = {
    startedAt,
    plannedMinutes: started.body.plannedMinutes,
    leastMinutes: least ?? 0,
    paused: paused !== undefined && finished === undefined,
  };
  if (finished !== undefined) {
    const { ranSeconds, milliliters } = finished.body;
    return {
      ...common,
      ...(ranSeconds === undefined ? {} : { ranSeconds }),
      finishedAt: finished.at ?? finished.recordedAt,
      milliliters,
      says:
        ranSeconds === undefined
          ? `${milliliters} mL; the running time was not measured`
          : `${milliliters} mL in ${inMinutes(ranSeconds * 1000)}`,
    };
  }
  const ran = runningTime(marks, now);
  if (!ran.measured) return { ...common, says: ran.says };
  const left = least === undefined ? undefined : Math.max(0, least * MILLISECONDS_A_MINUTE - ran.milliseconds);
  const says = `${common.paused ? 'paused; ' : ''}ran ${inMinutes(ran.milliseconds)}`;
  return {
    ...common,
    ranSeconds: Math.floor(ran.milliseconds / 1000),
    // While it is paused nobody knows when it may end.
    ...(left === undefined || common.paused
      ? {}
      : { earliestFinish: new Date(Date.parse(now.wall) + left).toISOString() }),
    says:
      left === undefined
        ? says
        : left > 0
          ? `${says}; at least ${inMinutes(left)} to go`
          : `${says}; may finish when the bag is empty`,
  };
}

/** Whoever lets it run again has read why it stands still. */
export function pauseOf(
  visit: Visit | undefined,
  nameOf: (staff: string) => string,
): Pick<NonNullable<VisitView['infusion']>, 'pause'> {
  const paused = visit?.infusion?.finished === undefined ? visit?.infusion?.paused : undefined;
  return paused === undefined
    ? {}
    : { pause: { at: paused.at ?? paused.recordedAt, by: nameOf(paused.author.staff), reason: paused.body.reason } };
}

function inMinutes(milliseconds: number): string {
  const seconds = Math.floor(milliseconds / 1000);
  const minutes = Math.floor(seconds / 60);
  return minutes === 0 ? `${seconds} s` : seconds % 60 === 0 ? `${minutes} min` : `${minutes} min ${seconds % 60} s`;
}
