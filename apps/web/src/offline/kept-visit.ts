/**
 * A visit that was kept, as it is now. What has passed since is added by a clock that runs evenly; where this screen was opened
 * without the network there is none, and the running time cannot be measured here: a device's own clock may have been moved.
 */
import type { VisitView } from '@twelvemonth/exchange';

const notMeasuredHere =
  'This screen was opened without the network: it cannot say how long the medicine has run. Time it by the clock on the wall, from the start on the day sheet.';

/** `seconds`: passed since it was kept; undefined: no clock of ours ran meanwhile. */
export function visitCarriedOn({ infusion, check, ...visit }: VisitView, seconds: number | undefined): VisitView {
  return {
    ...visit,
    ...(infusion === undefined ? {} : { infusion: infusionCarriedOn(infusion, seconds) }),
    ...(check === undefined ? {} : { check: checkCarriedOn(check, seconds) }),
  };
}

function infusionCarriedOn(
  infusion: NonNullable<VisitView['infusion']>,
  seconds: number | undefined,
): NonNullable<VisitView['infusion']> {
  const { ranSeconds, ...rest } = infusion;
  if (ranSeconds === undefined || infusion.paused || infusion.finishedAt !== undefined) return infusion;
  return seconds === undefined ? { ...rest, says: notMeasuredHere } : { ...rest, ranSeconds: ranSeconds + seconds };
}

function checkCarriedOn(
  { agoSeconds, ...check }: NonNullable<VisitView['check']>,
  seconds: number | undefined,
): NonNullable<VisitView['check']> {
  return agoSeconds === undefined || seconds === undefined ? check : { ...check, agoSeconds: agoSeconds + seconds };
}
