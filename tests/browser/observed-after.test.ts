/** Observations after the dose at the tablet (hazard 36): typed at the watch, told beside those before, and asked about at the door. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { fingersFit } from '../support/fingers.ts';
import { hands } from '../support/hands.ts';
import { patient, runningDrip } from '../support/running-drip.ts';
import { type Service, checked } from '../support/service.ts';
import { finish, removal, stepOn } from '../support/visit-by-hand.ts';

let at: Service;
let page: Page;

beforeAll(async () => {
  ({ at, page } = await runningDrip(31));
  for (const { title, fill, press } of [finish, removal]) {
    await page.getByRole('heading', { name: title }).waitFor();
    await fill(stepOn(page));
    await hands(stepOn(page)).press(press);
  }
  await page.getByRole('heading', { name: 'Watch afterwards' }).waitFor();
});
afterAll(() => at.close());

const texts = async (kind: string): Promise<string[]> => {
  const { entries } = await at.server.read<{ entries: { kind: string; text: string }[] }>(`/api/people/${patient}`);
  return entries.filter((entry) => entry.kind === kind).map(({ text }) => text);
};

it('those before are in sight where those after are typed, with the score as at the start', async () => {
  const { fill, pick, sees } = hands(stepOn(page));
  await sees('before the dose');
  await sees(/pulse 72\/min, pressure 130\/76 mmHg/);
  await fill('Watched for', '30');
  await pick('Well?', 'yes');
  for (const [label, value] of [
    ['Systolic pressure', '92'],
    ['Diastolic pressure', '60'],
    ['Pulse', '118'],
    ['Temperature', '38.6'],
    ['Oxygen saturation', '94'],
    ['Breaths', '22'],
  ] as const)
    await fill(label, value);
  await sees(/no total: air or oxygen and consciousness missing/);
  await pick('Air or oxygen', 'air');
  await pick('Consciousness', 'alert');
  // NEWS2 (Royal College of Physicians 2017): breaths 2, saturation 1, systolic 2, pulse 2, temperature 1.
  await sees(/8, high risk/);
  await pick('A new irregular pulse?', 'yes');
  await sees(/tell a doctor before they go/);
  await checked(page, 'observed-after');
  await fingersFit(page, 'observed-after');
});

it('they are written as after the dose, and stand beside those before at the door', async () => {
  at.clock.moveOn(30);
  await hands(stepOn(page)).press('Record');
  await page.getByRole('heading', { name: 'See them off' }).waitFor();
  const told = page.getByLabel('Observations of this visit');
  await expect.poll(async () => told.textContent()).toMatch(/before the dose.*pulse 72.*after the dose.*pulse 118/s);
  expect(await texts('observed')).toHaveLength(1);
  const [after, before, ...more] = (await texts('observations')).toSorted();
  expect(more).toEqual([]);
  expect(after).toContain('after the dose: pulse 118/min');
  expect(before).toContain('before the dose: pulse 72/min');
});

it('a pulse newly irregular is asked about before they go as fit', async () => {
  const { pick, press, sees } = hands(stepOn(page));
  await pick('Do they hold the card that says whom to call?', 'yes');
  await pick(/^Steady, drinking/, 'fit to go');
  await press('They have left');
  await sees(/The pulse was newly irregular after the dose/);
  await checked(page, 'observed-after-leaving');
  expect(await texts('left')).toEqual([]);
});
