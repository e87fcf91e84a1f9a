/**
 * Two tablets, one running dose: what the first writes without a network about a dose that the second has taken over meanwhile
 * is not taken in, and comes to a person with both sides in sight.
 */
import type { AddressInfo } from 'node:net';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { listToday, packChecked, planToday, wilhelmina } from '../../apps/server/test/support/at-the-chair.ts';
import { password, people, setUp } from '../../apps/server/test/support/own-server.ts';
import { cuttableNetwork } from '../support/cuttable-network.ts';
import { hands, signIn } from '../support/hands.ts';
import { keptOn } from '../support/kept-on-device.ts';
import { type Service, checked, service, tablet } from '../support/service.ts';
import { lookedAlong } from '../support/visit-by-hand.ts';

const patient = 'wilhelmina';
let at: Service;
let network: Awaited<ReturnType<typeof cuttableNetwork>>;
let first: Page;
let second: Page;

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await planToday(at.server);
  await listToday(at.server, patient, 1, wilhelmina);
  await packChecked(at.server, patient);
  network = await cuttableNetwork((at.server.app.server.address() as AddressInfo).port);
  first = await at.visitor(tablet, undefined, { keepsDay: true });
  await first.goto(network.url);
  await signIn(first, people.nurse.username, password);
});
afterAll(async () => {
  await network.close();
  await at.close();
});

const kinds = async (): Promise<string[]> =>
  (await at.server.read<{ entries: { kind: string }[] }>(`/api/people/${patient}`)).entries.map(({ kind }) => kind);

it('started at the first; without its network it writes that it was stopped, and the second pauses the same dose', async () => {
  await keptOn(first, 1);
  await first.goto(`${network.url}/people/${patient}/visit`);
  const { tick, press, fill } = hands(first);
  await tick('full name');
  await tick('birth date');
  await tick(lookedAlong);
  await press('It runs now');
  await first.getByRole('button', { name: /^Pause/ }).waitFor();
  network.cut();
  await press('Stop early');
  await fill('Given', '40');
  await fill('Why it was stopped', 'her arm swells');
  await press('Stopped for good');
  await expect.poll(async () => first.getByLabel('Sync').textContent()).toMatch(/offline since .* · 1 waiting/);
  second = await at.signedIn('checker', `/people/${patient}/visit`, tablet);
  await hands(second).press(/^Pause/);
  await hands(second).fill('Why it is paused', 'the pump alarms');
  await hands(second).press('It stands still now');
  await expect.poll(kinds).toContain('infusion-paused');
});

it('back on the network it is not taken in: a person sees what was written at the other, and lets theirs go', async () => {
  network.restore();
  await expect.poll(async () => first.getByLabel('Sync').textContent()).toMatch(/online · 1 needs you/);
  expect(await kinds()).not.toContain('infusion-finished');
  await first.getByLabel('Sync').getByRole('link').click();
  const { sees, fill, press } = hands(first.getByRole('main'));
  await sees(/infusion finished, 40 mL, her arm swells/);
  await sees(/the pump alarms|This drip is looked after at screen/);
  await checked(first, 'held-offline');
  await fill('Or let it go: why it does not stand', 'Chris had stopped it before and goes on with it');
  await press('Let mine go');
  await expect.poll(kinds).toContain('not-taken-in');
  expect(await kinds()).not.toContain('infusion-finished');
});

it('the second goes on with it, without being asked: it is held there', async () => {
  await hands(second).tick(lookedAlong);
  await hands(second).press(/^It runs again/);
  await expect.poll(kinds).toContain('infusion-resumed');
});
