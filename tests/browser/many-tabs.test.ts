/** More tabs of one browser than it keeps connections to a server (six): each works, and each hears what others write. */
import type { AddressInfo } from 'node:net';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { lineNow, listToday, planToday, wilhelmina } from '../../apps/server/test/support/at-the-chair.ts';
import { setUp } from '../../apps/server/test/support/own-server.ts';
import { cuttableNetwork } from '../support/cuttable-network.ts';
import { keptOn } from '../support/kept-on-device.ts';
import { type Service, service, tablet } from '../support/service.ts';
import { checklist, stepOn } from '../support/visit-by-hand.ts';

const patient = 'wilhelmina';
let at: Service;
const tabs: Page[] = [];

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await planToday(at.server);
  await listToday(at.server, patient, 1, wilhelmina);
  tabs.push(await at.signedIn('nurse', `/people/${patient}/visit`, tablet));
});
afterAll(() => at.close());

const opened = async (): Promise<void> => {
  const tab = await tabs[0]!.context().newPage();
  tabs.push(tab);
  await tab.goto(`${at.url}/people/${patient}/visit`);
  await tab.getByRole('heading', { name: 'Arrived' }).waitFor();
};
const arrived = (): Promise<unknown> =>
  at.server.done(
    'checker',
    lineNow(at.server, patient, 'arrived', {
      session: 'thornbeck-2026-11-25',
      identifiers: ['full name', 'birth date'],
      chair: 2,
    }),
  );

it('nine are open, and none waits for a connection', async () => {
  for (let count = 1; count < 9; count += 1) await opened();
  for (const tab of tabs) expect(await tab.getByLabel('Sync').textContent()).toMatch(/online$/);
});

it('what somebody writes elsewhere comes to all of them', async () => {
  await arrived();
  for (const tab of tabs) await tab.getByRole('heading', { name: 'Observations' }).waitFor();
});

it('the tab that held the stream is closed: the others still hear', async () => {
  await tabs.pop()?.close();
  await at.server.done(
    'checker',
    lineNow(at.server, patient, 'observations', {
      pulsePerMinute: 72,
      systolicMmHg: 130,
      diastolicMmHg: 76,
      temperatureCelsius: 36.8,
      saturationPercent: 97,
      newIrregularPulse: false,
      when: 'before',
    }),
  );
  for (const tab of tabs) await tab.getByRole('heading', { name: 'Questions of the day' }).waitFor();
});

it('a step was written without a network in a tab that is closed since: another tab sends it', async () => {
  const network = await cuttableNetwork((at.server.app.server.address() as AddressInfo).port);
  const first = await at.visitor(tablet, await tabs[0]!.context().storageState(), { keepsDay: true });
  const address = `${network.url}/people/${patient}/visit`;
  await first.goto(network.url);
  await keptOn(first, 1);
  await first.goto(address);
  const second = await first.context().newPage();
  await second.goto(network.url);
  await second.getByRole('heading', { level: 1 }).waitFor();
  await first.getByRole('heading', { name: 'Questions of the day' }).waitFor();
  network.cut();
  await checklist.fill(stepOn(first));
  await first.getByRole('button', { name: 'Record the answers' }).click();
  await expect.poll(async () => second.getByLabel('Sync').textContent()).toMatch(/1 waiting/);
  await first.close();
  network.restore();
  await expect.poll(async () => second.getByLabel('Sync').textContent()).toMatch(/online$/);
  for (const tab of tabs) await tab.getByRole('heading', { name: 'Go, put off, or ask' }).waitFor();
  await second.context().close();
  await network.close();
});

it('somebody leaves in one of them: all ask who is there', async () => {
  await tabs[0]!.getByRole('button', { name: 'leave' }).click();
  for (const tab of tabs) await tab.getByRole('heading', { name: /^Sign in/ }).waitFor();
});
