/** The times of a session planned on screen: proposed, moved as a list and on a board of chairs with the checker speaking, locked, explained, tried out. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { infusionRuns, listToday, planToday } from '../../apps/server/test/support/at-the-chair.ts';
import { referralOf, setUp, workUp } from '../../apps/server/test/support/own-server.ts';
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
    await expect.poll(async () => visits(nurse).count()).toBe(4);
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
    const objections = nurse.getByRole('region', { name: 'Plan checker' }).getByRole('listitem');
    for (let presses = 0; presses < 20 && (await objections.count()) === 0; presses += 1) {
      await earlier.focus();
      await nurse.keyboard.press('Enter');
    }
    await expect.poll(async () => objections.first().textContent()).toMatch(/^\d\d:\d\d.*\.$/);
    await expect.poll(async () => visits(nurse).allTextContents()).not.toEqual(before);
    await press('Back to the proposed times');
    await expect.poll(async () => visits(nurse).allTextContents()).toEqual(before);
  });

  it('says why somebody does not come earlier', async () => {
    const last = visits(nurse).last();
    await last.getByRole('button', { name: /^Why this time\?/ }).click();
    await last.locator('div[aria-live]').waitFor();
    await expect.poll(async () => last.locator('div[aria-live]').textContent()).toMatch(/\d\d:\d\d/);
  });

  it('is tried out: when it ends and how full it is, as pictures, sentences and tables', async () => {
    const desk = await at.signedIn('nurse', path, desktop);
    const { press, sees } = hands(desk);
    await press('Try out this day');
    await sees(/The last has left by \d\d:\d\d on half of 2,000 days played/);
    await sees(/On average most people are in the unit at \d\d:\d\d/);
    await desk.locator('summary').filter({ hasText: 'as a table' }).first().click();
    await checked(desk, 'session-times-desk');
  });
});

describe('the board of chairs', () => {
  const saysOf = async (page: Page, name: string): Promise<string> => (await card(page, name).textContent()) ?? '';
  const boardOf = (page: Page) => page.getByRole('region', { name: 'Chair board' });
  const card = (page: Page, name: string) =>
    boardOf(page).getByRole('button', { name: new RegExp(`^${name} Ferreira`) });
  let desk: Page;

  it('is the same day with chairs as rows, in its own words and as a table', async () => {
    desk = await at.signedIn('nurse', path, desktop);
    const { pick, sees, unfold } = hands(desk);
    await pick('Shown as', 'a board of chairs');
    await boardOf(desk).waitFor();
    await sees('Plan checker: every rule is kept.');
    await expect.poll(async () => saysOf(desk, 'Iris')).toMatch(/^Iris Ferreira, \d\d:\d\d to \d\d:\d\d, chair \d$/);
    await unfold('the chair board');
    await expect
      .poll(async () => desk.getByRole('table', { name: 'Visits in order of coming' }).getByRole('row').count())
      .toBe(5);
    await checked(desk, 'session-board-desk');
  });

  it('a visit goes by arrow keys to another time and chair; Escape takes back, Enter lets go, Undo goes back', async () => {
    const { press } = hands(desk);
    const before = await saysOf(desk, 'Odile');
    await card(desk, 'Odile').focus();
    await desk.keyboard.press('ArrowRight');
    await desk.keyboard.press('ArrowDown');
    const moved = await saysOf(desk, 'Odile');
    expect(moved).not.toBe(before);
    await desk.keyboard.press('Escape');
    await expect.poll(async () => saysOf(desk, 'Odile')).toBe(before);
    await desk.keyboard.press('ArrowRight');
    await desk.keyboard.press('ArrowDown');
    await desk.keyboard.press('Enter');
    await expect.poll(async () => saysOf(desk, 'Odile')).toBe(moved);
    await press('Undo');
    await expect.poll(async () => saysOf(desk, 'Odile')).toBe(before);
  });

  it('dragged into somebody else’s chair the checker says whose it is, and what is locked stays when the rest is improved', async () => {
    const { press, pick, sees } = hands(desk);
    const [one, other] = [card(desk, 'Wanda'), card(desk, 'Iris')];
    await one.scrollIntoViewIfNeeded();
    const [from, to] = [await other.boundingBox(), await one.boundingBox()];
    if (from === null || to === null) throw new Error('the board is drawn');
    await desk.mouse.move(from.x + 20, from.y + 20);
    await desk.mouse.down();
    await desk.mouse.move(to.x + 20, to.y + 20, { steps: 8 });
    await sees(/^Plan checker: \d\d:\d\d/);
    await desk.mouse.up();
    await sees(/chair \d is still \w+ Ferreira’s until \d\d:\d\d, and \w+ Ferreira would sit down in it\./);
    // Two visits in one chair share its height until one of them is moved.
    await checked(desk, 'session-board-objection', { fits: false });
    await pick('What stays when the rest is planned again', 'time and chair');
    const locked = await saysOf(desk, 'Iris');
    expect(locked).toContain('time and chair locked, breaks a rule');
    await press('Improve what I drew');
    // In the checker's own words: what is read out follows only when the hand has rested.
    await desk.getByRole('region', { name: 'Plan checker' }).getByText('every rule is kept').waitFor();
    await expect.poll(async () => saysOf(desk, 'Iris')).toBe(locked.replace(', breaks a rule', ''));
  });

  it('is the same on a tablet, by finger, and a touch that is broken off moves nobody', async () => {
    await nurse.goto(`${at.url}${path}?view=board`);
    await boardOf(nurse).waitFor();
    const before = await saysOf(nurse, 'Nell');
    await card(nurse, 'Nell').scrollIntoViewIfNeeded();
    const box = await card(nurse, 'Nell').boundingBox();
    if (box === null) throw new Error('the board is drawn');
    const finger = await nurse.context().newCDPSession(nurse);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd' | 'touchCancel', across: number) =>
      finger.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: type === 'touchEnd' || type === 'touchCancel' ? [] : [{ x: box.x + 20 + across, y: box.y + 20 }],
      });
    const dragged = async (end: 'touchEnd' | 'touchCancel'): Promise<string> => {
      await touch('touchStart', 0);
      for (const across of [10, 30, 60]) await touch('touchMove', across);
      await touch(end, 60);
      return saysOf(nurse, 'Nell');
    };
    expect(await dragged('touchCancel')).toBe(before);
    expect(await dragged('touchEnd')).not.toBe(before);
    await checked(nurse, 'session-board-tablet');
  });
});

describe('the rest of the day', () => {
  let desk: Page;

  it('is planned from what has happened: what runs stays, who is not here is asked for, and why they move is said', async () => {
    await infusionRuns(at.server, 'wanda', 1);
    // Iris, told 09:00, does not come.
    at.clock.moveOn(35);
    desk = await at.signedIn('nurse', path, desktop);
    const { fill, press, sees } = hands(desk);
    await sees(/^The rest of the day, from 09:\d\d on$/);
    await fill('Iris Ferreira, told 09:00, comes at', '10:00');
    await desk.getByLabel(/^Nurses from/).fill('1');
    await press('Plan the rest again');
    await sees(/Iris Ferreira: 10:\d\d instead of 09:00\. I have told them\./);
    await sees(/Why: was told 09:00 and is not expected before 10:00/);
    await desk
      .getByRole('region', { name: 'Chair board' })
      .getByRole('button', { name: /^Wanda Ferreira/ })
      .focus();
    await sees('They are here: what has begun stays, and they are told nothing.');
    await checked(desk, 'session-rest-desk');
  });

  it('is written down once somebody was told, and the list says it', async () => {
    const { fill, press, sees } = hands(desk);
    const line = desk.getByRole('listitem').filter({ hasText: 'Iris Ferreira: 10:' });
    const to = (await line.textContent())?.match(/10:\d\d/)?.[0] ?? '';
    await line.getByRole('checkbox').check();
    await fill('Why the times change', 'she rang: the bus did not come');
    await press('Write down 1 new time');
    await sees(/^Something has happened since 09:\d\d: plan the rest again\.$/);
    await expect.poll(async () => line.count()).toBe(0);
    await desk.setViewportSize(tablet);
    await checked(desk, 'session-rest-tablet');
    await desk.goto(`${at.url}/sessions/thornbeck-2026-11-25`);
    await desk.getByRole('row').filter({ hasText: 'Iris Ferreira' }).filter({ hasText: to }).waitFor();
    await checked(desk, 'session-list-told');
  });
});

describe('an impossible day', () => {
  it('gets no plan on the board, but what is impossible and the least that would make it possible', async () => {
    const session = 'thornbeck-2026-11-26';
    await at.server.done('clerk', {
      name: 'plan session',
      session,
      body: {
        unit: 'thornbeck',
        on: '2026-11-26',
        zone: 'Europe/London',
        arriveAt: ['08:30'],
        opensAt: '08:30',
        closesAt: '09:30',
      },
    });
    await at.server.done(
      'clerk',
      referralOf('zita', { given: 'Zita', family: 'Ferreira', born: '1940-02-11', number: '999 204 7853' }),
    );
    await workUp(at.server, 'zita');
    await at.server.done('clerk', { name: 'book', patient: 'zita', session, place: 1 });
    const desk = await at.signedIn('nurse', `/sessions/${session}/times?view=board`, desktop);
    const { sees } = hands(desk);
    await sees('This day is impossible:');
    await sees(/^Zita Ferreira needs \d+ minutes and has 60 minutes between 08:30 and 09:30: \d+ minutes too few\.$/);
    await expect.poll(async () => desk.getByText(/^Between /).count()).toBe(0);
    await sees('Any one of these would be enough:');
    await sees(/^The day ends \d+ minutes later, at \d\d:\d\d\.$/);
    await expect.poll(async () => desk.getByRole('region', { name: 'Chair board' }).count()).toBe(0);
    await checked(desk, 'session-impossible');
  });
});
