/** While it runs: the site is looked at once the protocol's minutes have run, and the countdown goes on as before. */
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { hands } from '../support/hands.ts';
import { patient, runningDrip } from '../support/running-drip.ts';
import { type Service, checked, desktop } from '../support/service.ts';
import { lookedAlong } from '../support/visit-by-hand.ts';

let at: Service;
let page: Page;
let site: Locator;

beforeAll(async () => {
  ({ at, page } = await runningDrip());
  site = page.getByRole('region', { name: 'The site' });
});
afterAll(() => at.close());

const heightOf = async (place: Locator): Promise<number> => (await place.boundingBox())?.height ?? 0;
/** Seconds to the earliest finish, as the screen says. */
const left = async (): Promise<number> => {
  const [, minutes, seconds] = /(\d+) min (\d+) s/.exec((await page.getByRole('timer').textContent()) ?? '') ?? [];
  return Number(minutes) * 60 + Number(seconds);
};
const kinds = async (): Promise<string[]> => {
  const { entries } = await at.server.read<{ entries: { kind: string; text: string }[] }>(`/api/people/${patient}`);
  return entries.map(({ kind, text }) => (kind === 'site-check' ? text : kind));
};

describe('the look at the site', () => {
  it('is told beforehand, and asked for once five minutes have run', async () => {
    await hands(site).sees('Look at the site once it has run 5 minutes.');
    at.clock.moveOn(4);
    await page.reload();
    await hands(site).sees('Look at the site once it has run 5 minutes.');
    at.clock.moveOn(1);
    await page.reload();
    await hands(site).sees('Look at the site now.');
    await checked(page, 'visit-site-due-tablet');
    for (const button of await site.getByRole('button').all())
      await expect.poll(async () => heightOf(button)).toBeGreaterThanOrEqual(48);
    const desk = await at.signedIn('nurse', `/people/${patient}/visit`, desktop);
    await desk.getByText('Look at the site now.').waitFor();
    await checked(desk, 'visit-site-due-desk');
    await desk.context().close();
  });

  it('"site looks well" is one tap, and the countdown goes on', async () => {
    const before = await left();
    await hands(site).press('Site looks well');
    await hands(site).sees('Look again whenever it hurts.');
    await hands(site).sees(/site looks well while it runs \(Nora Nurse\)/);
    await expect.poll(async () => kinds()).toContain('site looks well while it runs');
    const after = await left();
    expect(after).toBeLessThanOrEqual(before);
    expect(after).toBeGreaterThan(9 * 60);
    await page.getByText('to the earliest finish').waitFor();
  });

  it('swelling or pain stops it in one tap; what is seen is written with its score while it stands still', async () => {
    // A slow answer: the screen shows that it stands still before the press is answered, and what is ticked by then stays.
    const answer = Promise.withResolvers<void>();
    await page.route(
      '**/api/acts',
      async (route) => {
        const response = await route.fetch();
        await answer.promise;
        await route.fulfill({ response });
      },
      { times: 1 },
    );
    await hands(site).press('Swelling or pain: it stands still now');
    await page.getByRole('heading', { name: 'Paused' }).waitFor();
    await hands(site).sees('Look at the site again.');
    await site.getByRole('checkbox', { name: 'redness', exact: true }).check({ force: true });
    answer.resolve();
    await page.getByText(/^Recorded for .*: infusion paused\.$/).waitFor();
    await site.getByRole('checkbox', { name: 'redness', exact: true, checked: true }).uncheck({ force: true });
    await expect.poll(async () => site.getByRole('button', { name: 'What is seen?' }).isDisabled()).toBe(true);
    await site.getByRole('checkbox', { name: 'swelling', exact: true }).check({ force: true });
    await site.getByRole('checkbox', { name: 'pain', exact: true }).check({ force: true });
    await checked(page, 'visit-site-paused-tablet');
    for (const label of await site.locator('label').all())
      await expect.poll(async () => heightOf(label)).toBeGreaterThanOrEqual(48);
    await hands(site).press('Record what is seen');
    await page.getByRole('heading', { name: 'Another cannula' }).waitFor();
    await page.goto(`${at.url}/people/${patient}/visit?step=infusion`);
    await hands(site).sees(/infiltration until shown otherwise.*0 to 5 \(Jackson 1998\): 2, early phlebitis/);
    await expect.poll(async () => kinds()).toContain('infusion-paused');
  });

  it('found well later it still runs only through another cannula, unless that look is withdrawn with a reason', async () => {
    await hands(site).press('Site looks well');
    await page.getByRole('heading', { name: 'Another cannula' }).waitFor();
    await page.goto(`${at.url}/people/${patient}/visit?step=infusion`);
    await page.getByRole('link', { name: 'Another cannula first' }).waitFor();
    await expect.poll(async () => page.getByRole('button', { name: 'It runs again' }).count()).toBe(0);
    expect(await page.getByRole('checkbox', { name: lookedAlong }).count()).toBe(0);
    const { entries } = await at.server.read<{ entries: { id: string; text: string }[] }>(`/api/people/${patient}`);
    const entry = entries.find(({ text }) => text.includes('early phlebitis'))?.id;
    await at.server.done('nurse', { name: 'withdraw', patient, entry, reason: 'written for the next chair' });
    await page.reload();
    await hands(page).tick(lookedAlong);
    await hands(page).press('It runs again');
    await page.getByText('to the earliest finish').waitFor();
    await hands(site).sees('Look at the site again.');
  });
});
