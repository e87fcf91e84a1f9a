/**
 * Longer work at a terminal, between whose steps others have a turn: how far it is is told where somebody watches, and Ctrl-C
 * ends it between two steps. Broken off there is no answer at all: nothing half done is printed or written.
 */
import { setImmediate } from 'node:timers/promises';
import type { InShares } from '@twelvemonth/planning';
import type { Output } from './command.ts';
import { stopped } from './ending.ts';

const percent = 100;

export async function inTurns<Answer>(doing: string, steps: InShares<Answer>, { passing }: Output): Promise<Answer> {
  let isStopped = false;
  let told = '';
  const stop = (): void => void (isStopped = true);
  // Kept until the end: whoever starts us may pass on a Ctrl-C that the terminal has sent us too.
  process.on('SIGINT', stop);
  try {
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done === true) return step.value;
      const tells = `${doing}: ${Math.floor(step.value * percent)} %, Ctrl-C stops it`;
      if (tells !== told) passing?.(tells);
      told = tells;
      await setImmediate();
      if (isStopped) throw stopped('Stopped: nothing is proposed, and nothing was written or changed.');
    }
  } finally {
    passing?.('');
    process.removeListener('SIGINT', stop);
  }
}
