/** Who may not record a step is told before it is filled in: an assistant at the needle. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { atTheNeedle } from '../support/at-the-needle.ts';
import { hands } from '../support/hands.ts';
import { type Service, checked, tablet } from '../support/service.ts';

let at: Service;
beforeAll(async () => {
  ({ at } = await atTheNeedle());
});
afterAll(() => at.close());

it('an assistant reads whom to call', async () => {
  const page = await at.signedIn('assistant', '/people/wilhelmina/visit', tablet);
  const { sees, pick, press } = hands(page.getByRole('main'));
  await sees('You are here as assistant: this step is recorded by a nurse in charge, nurse, prescriber or pharmacist.');
  await checked(page, 'whose-step');
  // The server refuses it too.
  await pick('Site', 'left forearm');
  await pick('Gauge', '22');
  await pick(/^Tries/, '1');
  await pick('Is it in?', 'yes');
  await press('Record');
  await sees(/^Not recorded/);
});

it('a nurse is told nothing of the kind', async () => {
  const page = await at.signedIn('nurse', '/people/wilhelmina/visit', tablet);
  await hands(page.getByRole('main')).sees('Is it in?');
  expect(await page.getByText(/^You are here as/).count()).toBe(0);
});
