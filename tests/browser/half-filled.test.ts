/** The next step is on the screen as soon as the notes have it, before the answer to the press: what is begun there stays. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { atTheNeedle } from '../support/at-the-needle.ts';
import { hands } from '../support/hands.ts';
import { type Service, checked } from '../support/service.ts';

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

/** Holds back what the server says to the next act until the test lets it go. */
async function answersLate(): Promise<() => void> {
  const held = Promise.withResolvers<void>();
  await page.route(
    '**/api/acts',
    async (route) => {
      const response = await route.fetch();
      await held.promise;
      await route.fulfill({ response });
    },
    { times: 1 },
  );
  return () => held.resolve();
}
const atVisit = async (): Promise<void> => {
  await page.goto(`${at.url}/people/wilhelmina/visit`);
  await page.getByRole('heading', { name: 'Saline flush' }).waitFor();
};
const flush = async (milliliters: string): Promise<void> => {
  const { press, fill, pick } = hands(page.getByRole('main'));
  await fill('Saline', milliliters);
  await pick(/^Ran freely/, 'yes');
  await pick(/^Anything with calcium/, 'no');
  await press('Record');
};
const toToday = async (): Promise<void> => {
  await page.getByRole('navigation', { name: 'Screens' }).getByRole('link', { name: 'Today' }).click();
  await page.waitForURL(`${at.url}/`);
};

it('what was refused after the nurse had gone on is told where she is, and leads back', async () => {
  await atVisit();
  const release = await answersLate();
  const { press, sees, follow } = hands(page.getByRole('main'));
  await flush('5000');
  await toToday();
  release();
  await sees('Visit of Wilhelmina Arkwright-Poe: what you pressed before you went on did not go through.');
  await checked(page, 'left-behind');
  await follow('Go back there');
  await page.getByRole('heading', { name: 'Saline flush' }).waitFor();
  await press('I have read it');
  await page.getByText(/before you went on/).waitFor({ state: 'detached' });
});

it('an answer that comes after the nurse has gone to another screen does not take her back', async () => {
  await atVisit();
  const release = await answersLate();
  const answered = page.waitForResponse('**/api/acts');
  await flush('10');
  await toToday();
  release();
  await answered;
  // What the answer brings about is asked for by now: the visit, fetched again.
  await page.getByRole('link', { name: 'Wilhelmina Arkwright-Poe' }).first().waitFor();
  await expect
    .poll(async () =>
      (await at.server.read<{ entries: { kind: string }[] }>('/api/people/wilhelmina')).entries.map(({ kind }) => kind),
    )
    .toContain('flush');
  await page.waitForLoadState('networkidle');
  expect(new URL(page.url()).pathname).toBe('/');
});
