/** Long work of one request, in slices: between two of them everybody else is answered. */
import { setImmediate as nextTurn } from 'node:timers/promises';
import type { InSteps } from '@twelvemonth/planning';
import { steadyMilliseconds } from './clock.ts';

/** How long one stretch of work may keep everyone else waiting. */
const sliceMilliseconds = 25;

export async function inSlices<Answer>(steps: InSteps<Answer>): Promise<Answer> {
  let began = steadyMilliseconds();
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    if (steadyMilliseconds() - began > sliceMilliseconds) {
      await nextTurn();
      began = steadyMilliseconds();
    }
  }
}
