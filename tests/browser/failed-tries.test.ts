/** A vein that is not found: what was tried stands on the screen, the form begins anew, and after two tries another is asked before a third. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { listToday } from '../../apps/server/test/support/at-the-chair.ts';
import { atTheNeedle } from '../support/at-the-needle.ts';
import { hands } from '../support/hands.ts';
import { type Service, checked, desktop } from '../support/service.ts';

let at: Service;
let page: Page;
beforeAll(async () => {
  ({ at, page } = await atTheNeedle());
  await listToday(at.server, 'ada', 2, { given: 'Ada', family: 'Brindle', born: '1940-03-01', number: '999 204 7721' });
});
afterAll(() => at.close());

async function triesOnce(): Promise<void> {
  const { pick, press, sees } = hands(page.getByRole('main'));
  await sees('Is it in?');
  await pick('Site', 'left forearm');
  await pick('Gauge', '22');
  await pick(/^Tries/, '1');
  await pick('Is it in?', 'no');
  await press('Record');
}
const told = (): Promise<number> =>
  page.getByText('Today: cannula 22 G, left forearm, 1 try, not placed (Nora Nurse).').count();

it('one failed try is told, and the same press again records no second one: nothing is filled in', async () => {
  await triesOnce();
  await expect.poll(told).toBe(1);
  await expect.poll(async () => page.getByRole('main').locator('input[type=radio]:checked').count()).toBe(0);
  await hands(page).sees('Recorded for Wilhelmina Arkwright-Poe: cannula.');
  await checked(page, 'cannula-one-try-failed');
});

it('after two, somebody else is asked for before the third is tried', async () => {
  expect(await page.getByText(/Somebody other than/).count()).toBe(0);
  await triesOnce();
  await expect.poll(told).toBe(2);
  await hands(page).sees('Somebody other than Nora Nurse tries next, and records it.');
  await checked(page, 'cannula-two-tries-failed');
});

it('a chair in which somebody sits is marked, and choosing it says who sits there', async () => {
  const desk = await at.signedIn('clerk', '/people/ada/visit', desktop);
  const { pick, sees } = hands(desk.getByRole('main'));
  await sees('Arrived');
  await pick(/^Chair/, '3 (Wilhelmina Arkwright-Poe)');
  await sees(/In chair 3 by the notes: Wilhelmina Arkwright-Poe/);
  await checked(desk, 'arrive-chair-taken');
  await pick(/^Chair/, '2');
  await expect.poll(async () => desk.getByText(/by the notes/).count()).toBe(0);
});
