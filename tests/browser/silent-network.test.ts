/**
 * A network that refuses nothing and answers nothing. The screens open from what the device keeps, a drip that runs is counted on
 * by an even clock or said not to be measured, whoever leaves is gone, and what was missed is there when it is back.
 */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import {
  infusionRuns,
  lineNow,
  listToday,
  otto,
  planToday,
  wilhelmina,
} from '../../apps/server/test/support/at-the-chair.ts';
import { password, people, setUp } from '../../apps/server/test/support/own-server.ts';
import { type Cuttable, overACuttableNetwork } from '../support/over-a-cuttable-network.ts';
import { hands, signIn } from '../support/hands.ts';
import { keptOn, namesKept } from '../support/kept-on-device.ts';
import { type Service, checked, service, tablet } from '../support/service.ts';

const patient = 'wilhelmina';
let at: Service;
let network: Cuttable;
let page: Page;

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await planToday(at.server);
  await listToday(at.server, patient, 1, wilhelmina);
  await listToday(at.server, 'otto', 2, otto);
  await infusionRuns(at.server, patient);
  ({ network, page } = await overACuttableNetwork(at));
}, 60_000);
afterAll(async () => {
  await network.close();
  await at.close();
});

const sync = async (): Promise<string> => (await page.getByLabel('Sync').textContent()) ?? '';
/** The browser says that something about its network changed: the screen asks the server whether it is there. */
const asksAgain = (): Promise<void> => page.evaluate(() => void window.dispatchEvent(new Event('online')));
const secondsIn = (text: string | null): number => {
  const [, minutes, seconds] = /(\d+) min (\d+) s/.exec(text ?? '') ?? [];
  return Number(minutes) * 60 + Number(seconds);
};
const secondsShown = async (): Promise<number> => secondsIn(await page.getByRole('timer').textContent());

it('the first screen is not blank while the server says nothing', async () => {
  const slow = await at.visitor(tablet);
  const held = Promise.withResolvers<void>();
  await slow.route('**/api/me', async (route) => {
    await held.promise;
    await route.continue();
  });
  await slow.goto(at.url);
  await hands(slow).sees('asking the server …');
  await checked(slow, 'opening', { settles: false });
  held.resolve();
  await slow.getByRole('heading', { name: 'Sign in' }).waitFor();
  await slow.context().close();
});

it('what somebody wrote meanwhile is there when it is back, and live updates go on', async () => {
  await keptOn(page, 2);
  await page.goto(`${network.url}/people/otto/visit`);
  await hands(page).sees('Arrived');
  network.fallSilent();
  await asksAgain();
  await expect.poll(sync).toMatch(/offline since/);
  const by = (kind: string, body: object) => at.server.done('checker', lineNow(at.server, 'otto', kind, body));
  await by('arrived', { session: 'thornbeck-2026-11-25', identifiers: ['full name', 'birth date'], chair: 2 });
  network.restore();
  await page.getByRole('heading', { name: 'Observations' }).waitFor();
  await expect.poll(sync).toMatch(/online$/);
  await by('observations', {
    pulsePerMinute: 72,
    systolicMmHg: 130,
    diastolicMmHg: 76,
    temperatureCelsius: 36.8,
    saturationPercent: 97,
    newIrregularPulse: false,
    when: 'before',
  });
  await page.getByRole('heading', { name: 'Questions of the day' }).waitFor();
});

it('a drip that runs is counted on where the copy is older than the screen', async () => {
  at.clock.moveOn(5);
  await page.goto(`${network.url}/people/${patient}/visit`);
  await page.getByRole('timer').waitFor();
  network.cut();
  await asksAgain();
  await expect.poll(sync).toMatch(/offline since/);
  // Nothing renews the copy now: it grows old while the screen counts on.
  const atCut = await secondsShown();
  await expect.poll(secondsShown).toBeLessThan(atCut - 3);
  await page.evaluate(() => {
    const timer = document.querySelector('[role=timer]');
    const shown = [timer?.textContent ?? ''];
    Object.assign(window, { shown });
    if (timer !== null)
      new MutationObserver(() => shown.push(timer.textContent ?? '')).observe(timer, {
        characterData: true,
        subtree: true,
        childList: true,
      });
  });
  const kept = page.waitForResponse(/\/visit$/);
  await page.getByRole('button', { name: 'Try again' }).click();
  await kept;
  const shown = (): Promise<string[]> => page.evaluate(() => (window as unknown as { shown: string[] }).shown);
  await expect.poll(async () => (await shown()).length).toBeGreaterThan(4);
  const seconds = (await shown()).map(secondsIn);
  expect(seconds).toEqual(seconds.toSorted((one, other) => other - one));
});

it('opened without the network the screen says that it cannot measure it, and measures it again with the network', async () => {
  await page.reload();
  await page.getByRole('heading', { name: 'The running time cannot be measured' }).waitFor();
  await hands(page).sees(/Time it by the clock on the wall/);
  network.restore();
  await page.getByRole('timer').waitFor();
  expect(await secondsShown()).toBeLessThan(600);
});

it('the app opens from what the device keeps', async () => {
  network.fallSilent();
  const context = page.context();
  await page.close();
  page = await context.newPage();
  page.setDefaultTimeout(60_000);
  const began = performance.now();
  await page.goto(network.url);
  await page.getByRole('heading', { level: 1 }).waitFor();
  console.log(`opened on a silent network after ${Math.round(performance.now() - began)} ms`);
  await hands(page).sees('Lindqvist');
});

it('whoever leaves is gone at once, nothing of the day stays, and the server ends the session when it hears of it', async () => {
  await page.getByRole('button', { name: 'leave' }).click();
  await page.getByRole('heading', { name: /^Sign in/ }).waitFor();
  expect(await page.locator('body').innerText()).not.toContain('Lindqvist');
  await expect.poll(async () => (await namesKept(page)).filter((name) => !name.startsWith('keys'))).toEqual([]);
  network.restore();
  await page.goto(network.url);
  await page.getByRole('heading', { name: /^Sign in/ }).waitFor();
  await expect.poll(async () => (await page.request.get(`${at.url}/api/me`)).status()).toBe(401);
  await signIn(page, people.nurse.username, password);
  await page.reload();
  await page.getByRole('navigation', { name: 'Screens' }).waitFor();
});
