/** The times of a session planned on screen: proposed, moved by keyboard with the checker speaking, explained, tried out. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { listToday, planToday } from '../../apps/server/test/support/at-the-chair.ts';
import { setUp } from '../../apps/server/test/support/own-server.ts';
import { hands } from '../support/hands.ts';
import { type Service, checked, desktop, service, tablet } from '../support/service.ts';

const path = '/sessions/thornbeck-2026-11-25/times';
let at: Service;
let nurse: Page;

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await planToday(at.server);
  const given = ['Wanda', 'Iris', 'Nell', 'Odile'];
  for (const [index, name] of given.entries())
    await listToday(at.server, name.toLowerCase(), index + 1, {
      given: name,
      family: 'Ferreira',
      born: `194${index}-09-30`,
      number: `999 204 781${index}`,
    });
  nurse = await at.signedIn('nurse', path, tablet);
});
afterAll(() => at.close());

const visits = (page: Page) => page.getByRole('main').locator('ol > li');

describe('the times of a session', () => {
  it('are proposed for everyone, kept to every rule, and nobody is booked by it', async () => {
    const { sees } = hands(nurse);
    await sees('A proposal: nobody is booked or told by it.');
    await sees('Plan checker: every rule is kept.');
    await sees(/4 people, everyone is seen\. The last leaves at \d\d:\d\d/);
    expect(await visits(nurse).count()).toBe(4);
    await checked(nurse, 'session-times-tablet');
  });

  it('a visit moved by keyboard into another one’s time is objected to in a sentence, and goes back', async () => {
    const { press } = hands(nurse);
    const before = await visits(nurse).allTextContents();
    const name = await visits(nurse)
      .last()
      .getByRole('button', { name: /minutes earlier$/ })
      .getAttribute('aria-label');
    const earlier = nurse.getByRole('button', { name: name ?? '', exact: true });
    const objections = nurse.getByRole('main').locator('div[aria-live] li');
    for (let presses = 0; presses < 20 && (await objections.count()) === 0; presses += 1) {
      await earlier.focus();
      await nurse.keyboard.press('Enter');
    }
    expect(await objections.first().textContent()).toMatch(/^\d\d:\d\d.*\.$/);
    expect(await visits(nurse).allTextContents()).not.toEqual(before);
    await press('Back to the proposed times');
    expect(await visits(nurse).allTextContents()).toEqual(before);
  });

  it('says why somebody does not come earlier', async () => {
    const last = visits(nurse).last();
    await last.getByRole('button', { name: /^Why this time\?/ }).click();
    await last.locator('div[aria-live]').waitFor();
    expect(await last.locator('div[aria-live]').textContent()).toMatch(/\d\d:\d\d/);
  });

  it('is tried out: when it ends and how full it is, as pictures, sentences and tables', async () => {
    const desk = await at.signedIn('nurse', path, desktop);
    const { press, sees } = hands(desk);
    await press('Try out this day');
    await sees(/The last has left by \d\d:\d\d on half of 2000 days played/);
    await sees(/On average most people are in the unit at \d\d:\d\d/);
    await desk.locator('summary').filter({ hasText: 'as a table' }).first().click();
    await checked(desk, 'session-times-desk');
  });
});
