/** Observations at the chair: a figure that cannot be read is not left out in silence, as if it had not been measured. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { lineNow, listToday, planToday, wilhelmina } from '../../apps/server/test/support/at-the-chair.ts';
import { setUp } from '../../apps/server/test/support/own-server.ts';
import { hands } from '../support/hands.ts';
import { type Service, checked, service, tablet } from '../support/service.ts';
import { observations, stepOn } from '../support/visit-by-hand.ts';

const patient = 'wilhelmina';
let at: Service;
let page: Page;

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await planToday(at.server);
  await listToday(at.server, patient, 1, wilhelmina);
  const arrived = { session: 'thornbeck-2026-11-25', identifiers: ['full name', 'birth date'], chair: 2 };
  await at.server.done('nurse', lineNow(at.server, patient, 'arrived', arrived));
  page = await at.signedIn('nurse', `/people/${patient}/visit`, tablet);
});
afterAll(() => at.close());

const written = async (): Promise<string[]> => {
  const { entries } = await at.server.read<{ entries: { kind: string; text: string }[] }>(`/api/people/${patient}`);
  return entries.filter(({ kind }) => kind === 'observations').map(({ text }) => text);
};

it('a temperature with two points is not sent as none: the field is gone to, the rest stays', async () => {
  await page.getByRole('heading', { name: observations.title }).waitFor();
  const { fill, press, sees } = hands(stepOn(page));
  await observations.fill(stepOn(page));
  await fill('Temperature', '38..4');
  await press('Record');
  await sees('Figures only.');
  const temperature = page.getByLabel('Temperature');
  await expect.poll(async () => temperature.evaluate((field) => field === document.activeElement)).toBe(true);
  await expect.poll(async () => temperature.getAttribute('aria-invalid')).toBe('true');
  expect(await written()).toEqual([]);
  await expect.poll(async () => page.getByLabel('Pulse').inputValue()).toBe('72');
  await checked(page, 'observations-unreadable');
});

it('read, it is written, with the fever that it is', async () => {
  const { fill, press } = hands(stepOn(page));
  await fill('Temperature', '38.4');
  await press('Record');
  await page.getByRole('heading', { name: 'Questions of the day' }).waitFor();
  expect((await written()).join()).toContain('38.4');
});
