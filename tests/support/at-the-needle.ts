import type { Page } from 'playwright-core';
import { decidedToGo, listToday, planToday, wilhelmina } from '../../apps/server/test/support/at-the-chair.ts';
import { setUp } from '../../apps/server/test/support/own-server.ts';
import { type Service, service, tablet } from './service.ts';

/** A service in which it was decided to go on with Wilhelmina, and the nurse's tablet at her next step: the cannula. */
export async function atTheNeedle(): Promise<{ readonly at: Service; readonly page: Page }> {
  const at = await service();
  await setUp(at.server);
  await planToday(at.server);
  await listToday(at.server, 'wilhelmina', 1, wilhelmina);
  await decidedToGo(at.server, 'wilhelmina', 3);
  return { at, page: await at.signedIn('nurse', '/people/wilhelmina/visit', tablet) };
}
