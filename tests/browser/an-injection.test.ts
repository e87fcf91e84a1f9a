/**
 * An injection at the chair: prepared by one person, checked by another who has not seen the first reading, given after she was
 * asked once more who she is. Denosumab goes under the skin (product text, read). At the tablet; the order's steps only.
 */
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { decidedToGo, lineNow, listToday, planToday } from '../../apps/server/test/support/at-the-chair.ts';
import { password, people, setUp } from '../../apps/server/test/support/own-server.ts';
import { fingersFit } from '../support/fingers.ts';
import { type Hands, hands } from '../support/hands.ts';
import { type Service, checked, service, tablet } from '../support/service.ts';

const patient = 'sibyl';
let at: Service;
let page: Page;
let step: Locator;
let chairside: Hands;

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await planToday(at.server);
  await listToday(at.server, patient, 1, {
    given: 'Sibyl',
    family: 'Halfyear',
    born: '1950-02-11',
    number: '999 204 7713',
  });
  await at.server.done(
    'prescriber',
    lineNow(at.server, patient, 'prescription', {
      regimen: 'denosumab-60-six-monthly',
      validFrom: '2026-11-25',
      validUntil: '2027-11-24',
    }),
  );
  await decidedToGo(at.server, patient);
  page = await at.signedIn('nurse', `/people/${patient}/visit`, tablet);
  step = page.getByRole('main').getByRole('region').first();
  chairside = hands(step);
});
afterAll(() => at.close());

it('after the go the pack is read: no cannula, no drip, no minutes', async () => {
  const { fill, pick, press, tick } = chairside;
  await step.getByRole('heading', { name: 'Preparation' }).waitFor();
  const list = page.getByRole('list').filter({ hasText: 'second check' }).first();
  await expect.poll(async () => list.textContent()).not.toMatch(/cannula|infusion/);
  await expect.poll(async () => step.getByLabel('To run in', { exact: true }).count()).toBe(0);
  await checked(page, 'injection-preparation');
  await fingersFit(page, 'injection-preparation');
  await pick('The pack says', 'denosumab 60 mg');
  await fill('Batch', 'PA-7711');
  await fill('Expiry', '30 04 2028');
  await tick('full name');
  await tick('number');
  await pick('Clear, and of the colour its product text says?', 'yes');
  await press('Prepared');
});

it('the second check shows nothing of the first, is another person’s, and asks for no pump', async () => {
  const { fill, pick, press, sees, tick } = chairside;
  await step.getByRole('heading', { name: 'Independent second check' }).waitFor();
  await expect.poll(async () => page.content()).not.toContain('PA-7711');
  await expect.poll(async () => step.getByRole('group', { name: 'It will run by' }).count()).toBe(0);
  await checked(page, 'injection-second-check');
  await fingersFit(page, 'injection-second-check');
  const read = async (username: string): Promise<void> => {
    await pick('The pack says', 'denosumab 60 mg');
    await fill('Last four signs of the batch', '7711');
    await fill('Expiry, month and year', '04 2028');
    await tick('full name');
    await tick('birth date');
    await fill('Your username', username);
    await fill('Your password', password);
    await press('Sign my reading');
  };
  await read(people.nurse.username);
  await sees(/prepared it|another person|someone else/i);
  await read(people.checker.username);
});

it('she is asked once more who she is; where and how many is written, and it is in her notes', async () => {
  const { fill, pick, press, sees, tick } = chairside;
  await step.getByRole('heading', { name: 'Give the injection' }).waitFor();
  await expect.poll(async () => step.getByRole('button', { name: 'Two identifiers first' }).isDisabled()).toBe(true);
  await tick('full name');
  await tick('birth date');
  await expect.poll(async () => step.getByRole('radio', { name: /vein/ }).count()).toBe(0);
  await pick('Injected into', 'left thigh');
  await fill('How many', '2');
  await press('It is given now');
  await sees(/one dose is 1 injection of denosumab 60 mg/);
  await checked(page, 'injection-give');
  await fingersFit(page, 'injection-give');
  await fill('How many', '1');
  await press('It is given now');
  await step.getByRole('heading', { name: 'Watch afterwards' }).waitFor();
  await expect.poll(async () => page.getByRole('button', { name: /put off/i }).count()).toBe(0);
  const { entries } = await at.server.read<{ entries: { kind: string; text: string; by: { name: string } }[] }>(
    `/api/people/${patient}`,
  );
  expect(entries.find(({ kind }) => kind === 'dose')?.text).toContain('1 injection into the left thigh');
  expect(entries.find(({ kind }) => kind === 'second-check')?.by.name).toBe(people.checker.name);
});

it('the family doctor reads what was injected and where, never of a drip, and that the next must not be late', async () => {
  await page.goto(`${at.url}/people/${patient}/letter`);
  const letter = page.frameLocator('iframe').locator('body');
  await expect.poll(async () => letter.textContent()).toContain('denosumab 60 mg, injected (left thigh)');
  const text = await letter.textContent();
  expect(text).toContain('wears off when a dose is late');
  expect(text).not.toMatch(/zoledronic|infusion|Running time/);
});
