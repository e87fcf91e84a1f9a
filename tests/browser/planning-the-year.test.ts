/** The year planned on screen: what planning reckons with, the coming years with sliders. */
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
    expect(await headline(desk).textContent()).toMatch(
      /of 100 futures nobody who joins in the third year waits longer/,
    );
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
    expect(await page.getByRole('slider', { name: /^New referrals/ }).getAttribute('aria-valuetext')).toBe('9 a week');
    await sees(/As things stand \(dotted\)/);
    await checked(page, 'look-ahead-tablet');
    await press('All as it is');
    await sees('As things stand');
    await sees(/From 500 futures/);
    expect(await headline(page).textContent()).toBe(before);
  });
});
