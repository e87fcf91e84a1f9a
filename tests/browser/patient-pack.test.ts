/** The patient pack: asked for, looked at as it will be on paper, given, written down; each document checked as a page of its own. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { referralOf, sessionOn, setUp, workUp } from '../../apps/server/test/support/own-server.ts';
import { hands } from '../support/hands.ts';
import { type Service, checked, desktop, service, tablet } from '../support/service.ts';

let at: Service;
const documentPath = (query = ''): string => `/api/people/wilhelmina/patient-pack/document?${query}`;

beforeAll(async () => {
  at = await service({ ownPages: true });
  await setUp(at.server);
  await at.server.done('clerk', referralOf('wilhelmina'));
  await workUp(at.server, 'wilhelmina');
  await at.server.done('nurse', sessionOn('s1', '2026-12-03'));
  await at.server.done('clerk', { name: 'book', patient: 'wilhelmina', session: 's1', place: 1 });
});
afterAll(() => at.close());

describe('the screen', () => {
  it.each([
    ['desk', desktop],
    ['tablet', tablet],
    ['phone', { width: 320, height: 640 }],
  ] as const)('passes the checks at the width of a %s', async (width, viewport) => {
    const page = await at.signedIn('nurse', '/people/wilhelmina/pack', viewport);
    await hands(page).sees(/No amount of paracetamol is printed/);
    await checked(page, `pack-${width}`);
    await page.context().close();
  });

  it('asks about the liver before an amount is printed, says what is left out, and writes down what was given', async () => {
    const page = await at.signedIn('nurse', '/people/wilhelmina', desktop);
    const { follow, sees, pick, press } = hands(page);
    await follow('Patient pack');
    await page.getByRole('heading', { level: 1, name: 'Patient pack' }).waitFor();
    await sees(/Not printed, next year:/);
    const paper = page.frameLocator('iframe');
    let letGo = (): void => undefined;
    const held = new Promise<void>((done) => {
      letGo = done;
    });
    await paper.getByText('Ask your nurse how much paracetamol').waitFor();
    await pick('Liver trouble, a lot of alcohol, or eating too little?', 'No, none of these');
    await paper.getByText('1 or 2 tablets of paracetamol 500 mg, up to 4 times a day').waitFor();
    await pick('How large', 'One easy page');
    await paper.getByRole('heading', { level: 1, name: 'Your drip on one page' }).waitFor();
    // An answer that is slow to come: what was asked for before is never written down as given.
    await page.route(/\/patient-pack\?.*language=en-US/, async (route) => {
      await held;
      await route.continue();
    });
    await pick('Language', 'English (American)');
    await page.getByRole('button', { name: 'fetching it …' }).waitFor();
    await expect.poll(async () => page.getByRole('button', { name: 'I gave it to them' }).count()).toBe(0);
    letGo();
    await press('I gave it to them');
    await page
      .getByText(/patient pack given: easy page, large print, en-US, pack-us-2/)
      .first()
      .waitFor();
    // A pack is no letter: the letter to the family doctor is still owed after a dose.
    await page.context().close();
  });
});

/** The very document, on a page of its own: as it is served it may run nothing, not even a check. */
async function opened(query: string, viewport: { width: number; height: number }): Promise<Page> {
  const answer = await at.server.ask(documentPath(query), { as: 'nurse' });
  const page = await at.visitor(viewport);
  await page.setContent(answer.body);
  return page;
}

describe('the documents', () => {
  it.each([
    ['normal', 'size=normal&liver=fine', desktop],
    ['large', 'size=large&language=en-US', tablet],
    ['very-large', 'size=very+large', tablet],
    ['easy', 'easy=yes&size=large&liver=fine', tablet],
    ['phone', 'size=normal', { width: 320, height: 640 }],
    // 400 % zoom on a phone of 320 px leaves 80 px of a page.
    ['phone-400-percent', 'size=normal', { width: 80, height: 160 }],
  ] as const)('%s: no violation, nothing wider than the screen, 7:1', async (name, query, viewport) => {
    const page = await opened(query, viewport);
    await checked(page, `pack-document-${name}`);
    const colours = await page.evaluate(() =>
      [...document.querySelectorAll('main *, footer *')].map((element) => getComputedStyle(element).color),
    );
    expect([...new Set(colours)]).toEqual(['rgb(0, 0, 0)']);
    await page.context().close();
  });

  it('reads without JavaScript, and small: under 60 kB', async () => {
    const answer = await at.server.ask(documentPath(), { as: 'nurse' });
    expect(answer.body.length).toBeLessThan(60_000);
    expect(answer.body).not.toContain('<script');
  });
});

describe('a page of their own', () => {
  const born = async (page: Page, year: string): Promise<void> => {
    for (const [name, value] of [
      ['Day', '2'],
      ['Month', '6'],
      ['Year', year],
    ] as const)
      await page.getByLabel(name, { exact: true }).fill(value);
    await page.getByRole('button', { name: 'Open my page' }).click();
  };

  it('is handed over at the desk, opened at home without scripts, answered, and seen at the desk', async () => {
    const desk = await at.signedIn('nurse', '/people/wilhelmina/pack', desktop);
    await hands(desk).follow('own page and questions');
    await checked(desk, 'own-page-before-desk');
    await hands(desk).press('Make an address');
    const address = await desk.getByText(/^http\S+\/p\/\S+$/).innerText();
    await hands(desk).sees('This address is shown only now.');

    const home = await at.visitor({ width: 320, height: 640 }, undefined, { runsScripts: false });
    await home.goto(address);
    await born(home, '1942');
    await home.getByText('That is not the date we have.').waitFor();
    await born(home, '1941');
    await home.getByText('Thursday 3 December 2026 at 09:00, Thornbeck Day Unit').waitFor();
    await home.getByRole('button', { name: 'Send this to the unit' }).click();
    await home.getByText('You have not told us anything yet.').waitFor();
    const thigh = home.getByRole('group', { name: /new pain in your thigh/ });
    await thigh.getByLabel('Yes').check();
    await thigh.getByLabel('Tell us more if you like').fill('since Sunday, left');
    await home.getByRole('button', { name: 'Send this to the unit' }).click();
    await home.getByRole('heading', { name: 'Thank you' }).waitFor();
    await home.getByText('If you get worse, do not wait for us.').waitFor();
    await home.getByRole('link', { name: 'Back to my page' }).click();
    await home.getByRole('link', { name: 'How to get ready' }).click();
    await home.getByRole('heading', { name: 'Getting ready', level: 1 }).waitFor();

    await hands(desk).sees(/thigh, hip or groin yes \("since Sunday, left"\)/);
    await checked(desk, 'own-page-told-desk');
    await desk.setViewportSize(tablet);
    await checked(desk, 'own-page-told-tablet');
    await hands(desk).fill(
      'Waits: what did you find, and what did you tell them?',
      'rang: X-ray asked for, place given up',
    );
    await hands(desk).press('I looked at it');
    await hands(desk).sees('Looked at: rang: X-ray asked for, place given up');

    for (const [width, viewport] of [
      ['phone', { width: 320, height: 640 }],
      ['phone-400-percent', { width: 80, height: 160 }],
    ] as const) {
      const phone = await at.visitor(viewport);
      await phone.goto(address);
      await checked(phone, `own-page-born-${width}`, { settles: false });
      await born(phone, '1941');
      await phone.getByRole('heading', { name: 'Your dates' }).waitFor();
      await checked(phone, `own-page-${width}`, { settles: false });
    }
    await desk.context().close();
  });

  it('asks after the first dose, without scripts, and says at once what may not wait', async () => {
    const line = {
      kind: 'dose',
      body: { medicine: 'zoledronic acid 5 mg', setting: 'this service', batch: 'PA-2391' },
      effectiveAt: '2026-11-25',
    };
    await at.server.done('nurse', { name: 'record', patient: 'wilhelmina', line });
    const handed = await at.server.ask('/api/own-page', {
      method: 'POST',
      as: 'nurse',
      body: { patient: 'wilhelmina', expiresOn: '2026-12-03' },
    });
    const { address } = handed.json<{ address: string }>();
    const phone = await at.visitor({ width: 320, height: 640 });
    await phone.goto(address);
    await born(phone, '1941');
    await phone.goto(`${address}/after`);
    await checked(phone, 'own-page-after-phone', { settles: false });

    const home = await at.visitor(tablet, undefined, { runsScripts: false });
    await home.goto(address);
    await born(home, '1941');
    await home.getByRole('link', { name: /Tell us how you have been since/ }).click();
    const { pick } = hands(home);
    await pick('Who fills this in?', 'I do');
    await pick(/How do you feel/, 'rough');
    await pick(/How much do you drink/, 'less than usual');
    await pick(/How do you take paracetamol/, 'as told');
    await pick(/A fit, or a faint/, 'Yes');
    await home.getByRole('button', { name: 'Send this to the unit' }).click();
    await home.getByText('Ring 999 now. Do not drive.').waitFor();
    await home.getByText('We have your answers.').waitFor();
    const desk = await at.signedIn('nurse', '/', desktop);
    await hands(desk).sees(/red flags/i);
    await desk.context().close();
  });

  it('the questions print, and what comes back is typed in', async () => {
    const paper = await at.server.ask('/api/people/wilhelmina/own-page/questions', { as: 'nurse' });
    const sheet = await at.visitor(tablet);
    await sheet.setContent(paper.body);
    await checked(sheet, 'own-page-questions-on-paper');
    const desk = await at.signedIn('nurse', '/people/wilhelmina/own-page', tablet);
    const { unfold, pick, press, sees } = hands(desk);
    await unfold('Type in what came back');
    await pick(/Do you have a red or sore eye/, 'No');
    await press('Write it down');
    await sees(/on paper: eyes no/);
    await desk.context().close();
  });
});
