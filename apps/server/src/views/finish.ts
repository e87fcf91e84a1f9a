/**
 * When the last person on the list can have left at the earliest: every step still to come at its usual length, and nobody
 * waiting for a nurse, a chair or a vein. A lower bound and called one; how likely a time is, only a rehearsal of the day tells.
 */
import { type Protocol, type Visit, type VisitStepName, dripSteps } from '@twelvemonth/clinical';

/** Usual minutes of a step. Common practice, no source; the infusion and the watch are the protocol's. */
const usualMinutes: Readonly<Record<Exclude<VisitStepName, 'infusion' | 'observe'>, number>> = {
  arrive: 3,
  observations: 5,
  checklist: 8,
  decision: 1,
  cannula: 6,
  flush: 1,
  preparation: 3,
  'second check': 2,
  injection: 2,
  removal: 3,
  leave: 5,
};

/** Minutes a person still needs; nought once they have left. `ranMinutes`: how long the infusion has run. */
export function minutesStillNeeded(
  visit: Visit | undefined,
  protocol: Protocol,
  { firstTimer, ranMinutes }: { readonly firstTimer: boolean; readonly ranMinutes: number },
): number {
  const open: readonly VisitStepName[] =
    visit === undefined
      ? dripSteps
      : visit.over
        ? []
        : visit.steps.filter(({ state }) => state !== 'done').map(({ step }) => step);
  return open.reduce((sum, step) => sum + minutesOfStep(step, protocol, firstTimer, ranMinutes), 0);
}

function minutesOfStep(step: VisitStepName, { number }: Protocol, firstTimer: boolean, ranMinutes: number): number {
  if (step === 'infusion') return Math.max(0, number.runningMinutesUsual - ranMinutes);
  if (step === 'observe') return firstTimer ? number.observeFirstMinutes : number.observeLaterMinutes;
  return usualMinutes[step];
}
