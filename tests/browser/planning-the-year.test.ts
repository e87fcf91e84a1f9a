/** The year planned on screen: what planning reckons with, the coming years with sliders, places suggested and accepted. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { referralOf, setUp, workUp } from '../../apps/server/test/support/own-server.ts';
import { hands } from '../support/hands.ts';
import { type Service, checked, desktop, service, tablet } from '../support/service.ts';

let at: Service;
const names = ['Wanda', 'Iris', 'Nell', 'Odile'];

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  for (const [index, given] of names.entries()) {
    const patient = given.toLowerCase();
    const who = { given, family: 'Ferreira', born: `194${index}-09-30`, number: `999 204 781${index}` };
    await at.server.done('clerk', referralOf(patient, who));
    await workUp(at.server, patient);
  }
  for (const [on, places] of [
    ['2026-12-01', 2],
    ['2026-12-03', 1],
    ['2026-12-10', 4],
  ] as const)
    await at.server.done('clerk', {
      name: 'plan session',
      session: `thornbeck-${on}`,
      body: {
        unit: 'thornbeck',
        on,
        zone: 'Europe/London',
        arriveAt: ['08:40', '09:00', '09:20', '09:40'].slice(0, places),
        opensAt: '08:30',
        closesAt: '17:00',
      },
    });
});
afterAll(() => at.close());

describe('what planning reckons with', () => {
  it('is written under Settings in plain words; what cannot be is refused beside its field', async () => {
    const lead = await at.signedIn('lead', '/settings', tablet);
    const { fill, press, sees } = hands(lead);
    await sees(/Planning: nothing of its own written yet/);
    await press(/^Planning of/);
    await sees(/Nothing of this was written yet/);
    await fill('Nurses at the chairs', '');
    await press('Record');
    await sees('Write a number.');
    await fill('Nurses at the chairs', '1');
    await fill('Cannula and flush', '12');
    await press('Record');
    await sees(/in steps of 5/);
    await checked(lead, 'planning-settings-tablet');
    await fill('Cannula and flush', '15');
    await press('Record');
    await sees(/Planning: 1 nurse at the chairs/);
    // The rest of the unit's settings stays.
    await sees(/chairs, 08:30 to 17:00/);
  });
});

describe('the coming years', () => {
  const headline = (page: Page) => page.getByRole('main').locator('section div[aria-live]').first();

  it('are looked ahead at from the notes, with ranges, the places needed and what was counted', async () => {
    const desk = await at.signedIn('nurse', '/sessions', desktop);
    const { follow, sees } = hands(desk);
    await follow('Look ahead');
    await sees(/From 500 futures/);
    await expect
      .poll(async () => headline(desk).textContent())
      .toMatch(/of 100 futures nobody who joins in the third year waits longer/);
    await sees(/of those alive, come for dose 2/);
    await desk.locator('summary').filter({ hasText: 'as a table' }).first().click();
    await checked(desk, 'look-ahead-desk');
  });

  it('a slider moved by keyboard answers at once, the number beside it too, and one press goes back', async () => {
    const page = await at.signedIn('nurse', '/look-ahead', tablet);
    const { fill, press, sees } = hands(page);
    await sees(/From 500 futures/);
    const before = await headline(page).textContent();
    await page.getByRole('slider', { name: /^New referrals/ }).focus();
    for (let presses = 0; presses < 5; presses += 1) await page.keyboard.press('PageUp');
    await sees('With these changes');
    await fill('New referrals', '9');
    await sees(/grows by [\d.]+ weeks every week and never recovers/);
    await expect
      .poll(async () => page.getByRole('slider', { name: /^New referrals/ }).getAttribute('aria-valuetext'))
      .toBe('9 a week');
    await sees(/As things stand \(dotted\)/);
    await checked(page, 'look-ahead-tablet');
    await press('All as it is');
    await sees('As things stand');
    await sees(/From 500 futures/);
    await expect.poll(async () => headline(page).textContent()).toBe(before);
  });
});

describe('places suggested', () => {
  const rows = (page: Page, name: string) => page.getByRole('row').filter({ hasText: name });
  const booked = async (patient: string): Promise<string | undefined> =>
    (await at.server.read<{ readonly place?: { readonly on: string } }>(`/api/people/${patient}`)).place?.on;
  let clerk: Page;

  it('are a list of changes, each with why and how good the whole is; nobody is booked by it', async () => {
    clerk = await at.signedIn('clerk', '/sessions', desktop);
    const { follow, sees } = hands(clerk);
    await follow('Suggest places');
    await sees(/4 people have a window in 3 sessions; 4 would have a place, 0 none/);
    await sees(/New places \(4\)/);
    await sees('proven best');
    const last = rows(clerk, 'Thu 10 Dec 2026').first();
    await last.getByRole('button', { name: /^why\?/ }).click();
    await sees(/Possible from .* meant for/);
    // Both earlier lists are full by this proposal: somebody else would have to wait instead.
    await sees(/1 Dec 2026 (would cost \d+ days? more in all|would be as good in all)/);
    await checked(clerk, 'suggest-places-desk');
    await expect
      .poll(async () => Promise.all(names.map((name) => booked(name.toLowerCase()))))
      .toEqual(names.map(() => undefined));
  });

  it('stopped on the way nothing is suggested and nothing has changed; asked again they are there', async () => {
    const page = await at.signedIn('clerk', '/sessions', tablet);
    // The worker really fills; only its answer is kept back, so that it is still at work whenever somebody looks.
    await page.evaluate(() => {
      globalThis.Worker = class extends Worker {
        override addEventListener(type: string, heard: EventListenerOrEventListenerObject): void {
          super.addEventListener(type, (event: Event) => {
            const { data } = event as MessageEvent<{ readonly says: string }>;
            const isHeld = data.says !== 'progress' && document.body.dataset['held'] !== undefined;
            if (!isHeld && typeof heard === 'function') heard(event);
          });
        }
      };
      document.body.dataset['held'] = 'yes';
    });
    const { follow, press, sees } = hands(page);
    await follow('Suggest places');
    const bar = page.getByRole('progressbar', { name: 'How far' });
    await expect.poll(async () => Number(await bar.getAttribute('value'))).toBeGreaterThan(0);
    await checked(page, 'suggest-places-working');
    await press('Stop');
    await sees(
      'Stopped. Nothing was suggested and nothing has changed: everybody keeps the place they have been told.',
    );
    await expect.poll(async () => bar.count()).toBe(0);
    expect(await Promise.all(names.map((name) => booked(name.toLowerCase())))).toEqual(names.map(() => undefined));
    await page.evaluate(() => delete document.body.dataset['held']);
    await press('Suggest again');
    await sees(/New places \(4\)/);
  });

  it('one line accepted is an ordinary booking; what was written since is said, and the rest stays a proposal', async () => {
    const { press, sees } = hands(clerk);
    const [first, second] = await rows(clerk, 'Tue 1 Dec 2026').all();
    const nameIn = async (row = first): Promise<string> =>
      ((await row?.getByRole('rowheader').getByRole('link').textContent()) ?? '').split(' ')[0]!.toLowerCase();
    const [accepted, moved] = [await nameIn(first), await nameIn(second)];
    await first!.getByRole('button', { name: /^Accept/ }).click();
    await first!.getByText('booked', { exact: true }).waitFor();
    await expect.poll(async () => booked(accepted)).toBe('2026-12-01');
    // Meanwhile somebody else books another of them.
    await at.server.done('clerk', { name: 'book', patient: moved, session: 'thornbeck-2026-12-10', place: 4 });
    await press('Tick all');
    await press(/^Accept 3 lines/);
    await sees(/Not booked: .*Somebody has written|Not booked: .*They have a place/);
    await sees('Accept the ticked ones');
    await expect.poll(async () => booked(moved)).toBe('2026-12-10');
    await expect
      .poll(async () => (await Promise.all(names.map((name) => booked(name.toLowerCase())))).includes(undefined))
      .toBe(false);
    await press('Suggest again');
    await sees(/From the notes of/);
  });

  it('a place that came free is given with one press to who is ready for it, on a tablet', async () => {
    const page = await at.signedIn('clerk', '/sessions/thornbeck-2026-12-01', tablet);
    const { press, sees } = hands(page);
    await press('Who could have it at once');
    await sees(/Ready for that date as things stand/);
    await checked(page, 'standby-tablet');
    const row = page.getByRole('row').filter({ hasText: 'has a place on' }).first();
    const name = ((await row.getByRole('rowheader').getByRole('link').textContent()) ?? '')
      .split(' ')[0]!
      .toLowerCase();
    await row.getByRole('button', { name: /^Give the place at/ }).click();
    await sees(/2 of 2 places taken/);
    await expect.poll(async () => booked(name)).toBe('2026-12-01');
  });
});
