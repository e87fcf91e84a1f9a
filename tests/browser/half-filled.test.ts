/** The next step is on the screen as soon as the notes have it, before the answer to the press: what is begun there stays. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { atTheNeedle } from '../support/at-the-needle.ts';
import { hands } from '../support/hands.ts';
import type { Service } from '../support/service.ts';

let at: Service;
let page: Page;
beforeAll(async () => {
  ({ at, page } = await atTheNeedle());
});
afterAll(() => at.close());

it('what is filled in there stays when the answer to the step before comes late', async () => {
  const held = Promise.withResolvers<void>();
  await page.route('**/api/acts', async (route) => {
    const response = await route.fetch();
    await held.promise;
    await route.fulfill({ response });
  });
  const { pick, press, sees, fill } = hands(page.getByRole('main'));
  await sees('Is it in?');
  await pick('Site', 'left forearm');
  await pick('Gauge', '22');
  await pick(/^Tries/, '1');
  await pick('Is it in?', 'yes');
  await press('Record');
  await page.getByRole('heading', { name: 'Saline flush' }).waitFor();
  await fill('Saline', '10');
  held.resolve();
  await sees('Recorded for Wilhelmina Arkwright-Poe: cannula.');
  expect(await page.getByLabel('Saline').inputValue()).toBe('10');
});
