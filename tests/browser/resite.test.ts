/** Swelling while it runs: stopped, looked at, another cannula with the old site written down, flushed, and it runs again. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Hands, hands } from '../support/hands.ts';
import { patient, runningDrip } from '../support/running-drip.ts';
import { type Service, checked, desktop, tablet } from '../support/service.ts';
import { lookedAlong } from '../support/visit-by-hand.ts';

let at: Service;
let page: Page;
let nurse: Hands;

beforeAll(async () => {
  ({ at, page } = await runningDrip(6));
  nurse = hands(page);
});
afterAll(() => at.close());

const cannula = async (tries: string, isIn: 'yes' | 'no'): Promise<void> => {
  await nurse.pick('New site', 'left forearm');
  await nurse.pick('Gauge', '22');
  await nurse.pick('Tries, this operator', tries);
  await nurse.pick('Is it in?', isIn);
  await nurse.press('Record');
};

it('is stopped in one tap, and runs again only after a look', async () => {
  await nurse.press('Swelling or pain: it stands still now');
  await page.getByRole('heading', { name: 'Paused' }).waitFor();
  await expect.poll(async () => page.getByRole('button', { name: 'Look at the site first' }).isDisabled()).toBe(true);
  await nurse.tickIn('What is seen', 'swelling');
  await nurse.press('Record what is seen');
});

it('then the step of the cannula stands there, with the old site and what was seen', async () => {
  await page.getByRole('heading', { name: 'Another cannula' }).waitFor();
  await nurse.sees(/stands still: swelling, right forearm/);
  await checked(page, 'visit-resite-tablet');
  const desk = await at.signedIn('nurse', `/people/${patient}/visit`, desktop);
  await desk.getByRole('heading', { name: 'Another cannula' }).waitFor();
  await checked(desk, 'visit-resite-desk');
  await hands(desk).follow('Stop it for good');
  await desk.getByRole('link', { name: 'Another cannula first' }).waitFor();
  await checked(desk, 'visit-resite-running-desk');
  await desk.context().close();
});

it('two failed tries ask for another operator', async () => {
  await nurse.pick('The old cannula, right forearm, is out: its site', 'swollen');
  await cannula('2', 'no');
  await page.getByText('The old cannula, right forearm').waitFor({ state: 'detached' });
  await cannula('1', 'yes');
  await nurse.sees(/You have tried 2 times today/);
  await page.context().close();
});

it('another nurse places it and flushes it, and it runs again; both sites stand in the notes', async () => {
  page = await at.signedIn('checker', `/people/${patient}/visit`, tablet);
  nurse = hands(page);
  await page.getByRole('heading', { name: 'Another cannula' }).waitFor();
  await cannula('1', 'yes');
  await page.getByRole('heading', { name: 'Saline flush' }).waitFor();
  await nurse.fill('Saline', '10');
  await nurse.pick('Ran freely, no swelling, no pain?', 'yes');
  await nurse.pick(/^Anything with calcium/, 'no');
  await nurse.press('Record');
  // The line was off: it does not run again before somebody has looked along it once more.
  await expect
    .poll(async () => page.getByRole('button', { name: 'Look along the line first' }).isDisabled())
    .toBe(true);
  await nurse.tick(lookedAlong);
  await checked(page, 'visit-runs-again-tablet');
  await nurse.press('It runs again');
  await page.getByRole('heading', { name: 'Running' }).waitFor();
  const { entries } = await at.server.read<{ entries: { text: string }[] }>(`/api/people/${patient}`);
  const texts = entries.map(({ text }) => text).join('\n');
  expect(texts).toContain('cannula removed, site swollen');
  expect(texts).toMatch(/cannula 22 G, left forearm, 2 tries, not placed/);
  expect(texts).toMatch(/cannula 22 G, left forearm, 1 try, in place/);
});
