/** Called away between check and start: the pack is read once more; a form left half filled is begun anew. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import {
  listToday,
  otto,
  odette,
  packChecked,
  planToday,
  readyToPrepare,
  wilhelmina,
} from '../../apps/server/test/support/at-the-chair.ts';
import { setUp } from '../../apps/server/test/support/own-server.ts';
import { type Hands, hands } from '../support/hands.ts';
import { type Service, checked, service, tablet } from '../support/service.ts';
import { lookedAlong } from '../support/visit-by-hand.ts';

let at: Service;
let page: Page;
let nurse: Hands;

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await planToday(at.server);
  await listToday(at.server, 'wilhelmina', 1, wilhelmina);
  await listToday(at.server, 'odette', 2, odette);
  await listToday(at.server, 'otto', 3, otto);
  await packChecked(at.server, 'wilhelmina');
  await readyToPrepare(at.server, 'odette', 2);
});
afterAll(() => at.close());

it('too long after the check the pack is read once more before it runs', async () => {
  at.clock.moveOn(12);
  page = await at.signedIn('nurse', '/people/wilhelmina/visit', tablet);
  nurse = hands(page);
  await nurse.sees('12 minutes went by since the second check.');
  await checked(page, 'visit-interrupted-tablet');
  await nurse.tickIn('Asked and matched at the chair', 'full name');
  await nurse.tickIn('Asked and matched at the chair', 'birth date');
  await expect.poll(async () => page.getByRole('button', { name: 'Read the pack once more' }).isDisabled()).toBe(true);
  await nurse.pick('The pack says', 'zoledronic acid 5 mg in 100 mL');
  await nurse.fill('Last four signs of the batch', '9999');
  await nurse.tick(lookedAlong);
  await nurse.press('It runs now');
  await nurse.sees(/not the pack that was prepared and checked/);
  await nurse.fill('Last four signs of the batch', '2391');
  await nurse.press('It runs now');
  await page.getByText('to the earliest finish').waitFor();
  await page.context().close();
});

it('a screen that counted too little, as one that slept does, asks for the pack when the server says so', async () => {
  await packChecked(at.server, 'otto', 3);
  page = await at.signedIn('nurse', '/people/otto/visit', tablet);
  nurse = hands(page);
  await nurse.tickIn('Asked and matched at the chair', 'full name');
  await nurse.tickIn('Asked and matched at the chair', 'birth date');
  await nurse.tick(lookedAlong);
  at.clock.moveOn(12);
  await nurse.press('It runs now');
  await nurse.pick('The pack says', 'zoledronic acid 5 mg in 100 mL');
  await nurse.fill('Last four signs of the batch', '2391');
  await nurse.press('It runs now');
  await page.getByText('to the earliest finish').waitFor();
  await page.context().close();
});

it('a preparation left half filled is empty again', async () => {
  page = await at.signedIn('nurse', '/', tablet);
  await page.clock.install();
  await page.goto(`${at.url}/people/odette/visit`);
  nurse = hands(page);
  await nurse.fill('Batch', 'PA-2391');
  await page.clock.fastForward('09:00');
  await expect.poll(async () => page.getByLabel('Batch').inputValue()).toBe('PA-2391');
  await page.clock.fastForward('02:00');
  await nurse.sees(/begun and left for more than 10 minutes/);
  await expect.poll(async () => page.getByLabel('Batch').inputValue()).toBe('');
});
