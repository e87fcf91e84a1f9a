/** One person whose infusion runs, and the nurse's tablet at their chair. */
import type { Page } from 'playwright-core';
import { infusionRuns, listToday, planToday, wilhelmina } from '../../apps/server/test/support/at-the-chair.ts';
import { setUp } from '../../apps/server/test/support/own-server.ts';
import { type Service, service, tablet } from './service.ts';

export const patient = 'wilhelmina';

export async function runningDrip(minutes = 0): Promise<{ readonly at: Service; readonly page: Page }> {
  const at = await service();
  await setUp(at.server);
  await planToday(at.server);
  await listToday(at.server, patient, 1, wilhelmina);
  await infusionRuns(at.server, patient);
  at.clock.moveOn(minutes);
  return { at, page: await at.signedIn('nurse', `/people/${patient}/visit`, tablet) };
}
