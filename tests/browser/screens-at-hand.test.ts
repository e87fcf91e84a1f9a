/**
 * Soon after somebody has signed in, every other screen is at hand without the network, with a service worker or without. It is
 * only fetched, not run: running them one after the other held a slow tablet up for a third of a second.
 */
import type { AddressInfo } from 'node:net';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { listToday, planToday, wilhelmina } from '../../apps/server/test/support/at-the-chair.ts';
import { password, people, setUp } from '../../apps/server/test/support/own-server.ts';
import { cuttableNetwork } from '../support/cuttable-network.ts';
import { signIn } from '../support/hands.ts';
import { type Service, service, tablet } from '../support/service.ts';

let at: Service;
beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await planToday(at.server);
  await listToday(at.server, 'wilhelmina', 1, wilhelmina);
});
afterAll(() => at.close());

/** Every script the page has compiled since it was opened, by name without its fingerprint. */
async function scriptsRun(page: Page): Promise<ReadonlySet<string>> {
  const run = new Set<string>();
  const cdp = await page.context().newCDPSession(page);
  cdp.on('Debugger.scriptParsed', ({ url }) => run.add(/assets\/(\w+)/.exec(url)?.[1] ?? url));
  await cdp.send('Debugger.enable');
  return run;
}

/** Those of the files that are in no cache of this browser yet: the service worker's, or the one every browser has. */
const stillToFetch = (page: Page, files: readonly string[]): Promise<string[]> =>
  page.evaluate(async (wanted) => {
    const fetched = new Set(performance.getEntriesByType('resource').map(({ name }) => new URL(name).pathname));
    const missing = [];
    for (const file of wanted)
      if (file !== '/' && !fetched.has(file) && (await caches.match(file)) === undefined) missing.push(file);
    return missing;
  }, files);

describe.each([
  ['with a service worker', true],
  ['without one', false],
] as const)('%s', (_, keepsDay) => {
  it('the screens are fetched and none but the one shown is run; the network goes, and another opens', async () => {
    const network = await cuttableNetwork((at.server.app.server.address() as AddressInfo).port);
    const page = await at.visitor(tablet, undefined, { keepsDay });
    const run = await scriptsRun(page);
    await page.goto(network.url);
    await signIn(page, people.nurse.username, password);
    await page.getByText('Wilhelmina Arkwright-Poe').first().waitFor();
    const files = (await (await fetch(`${network.url}/screen-files.json`)).json()) as string[];
    expect(files.length).toBeGreaterThan(50);
    await expect.poll(async () => stillToFetch(page, files), { timeout: 30_000 }).toEqual([]);
    expect(run).toContain('TodayScreen');
    expect([...run].filter((name) => name.endsWith('Screen') && name !== 'TodayScreen')).toEqual([]);
    network.cut();
    await page.getByRole('link', { name: 'People', exact: true }).click();
    await page.getByRole('heading', { level: 1, name: 'People' }).waitFor();
    await network.close();
    await page.context().close();
  });
});
