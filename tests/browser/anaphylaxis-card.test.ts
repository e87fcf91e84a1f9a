/** The anaphylaxis card: one tap away wherever a person sits at a chair, and shown to whoever asks, signed in or not. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  password,
  people,
  referralOf,
  sessionOn,
  setUp,
  thornbeck,
  workUp,
} from '../../apps/server/test/support/own-server.ts';
import { type Service, checked, desktop, service, tablet } from '../support/service.ts';

let at: Service;
beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await at.server.done('clerk', referralOf('wilhelmina'));
  await workUp(at.server, 'wilhelmina');
  await at.server.done('nurse', sessionOn('thornbeck-2026-11-25', '2026-11-25'));
  await at.server.done('clerk', { name: 'book', patient: 'wilhelmina', session: 'thornbeck-2026-11-25', place: 1 });
});
afterAll(() => at.close());

const opens = (page: Page) => page.getByRole('link', { name: 'Anaphylaxis card' });
const card = (page: Page) => page.getByRole('heading', { level: 1, name: 'Anaphylaxis' });
const back = (page: Page) => page.getByRole('link', { name: 'Back to where you were' });

/** One tap, nothing scrolled: a finger has 48 px, and what it meets there is the link. */
async function inOneTap(page: Page): Promise<void> {
  const box = await opens(page).boundingBox();
  const { width, height } = page.viewportSize() ?? tablet;
  if (box === null) throw new Error('the link to the card is not on the screen');
  expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(48);
  expect(box.x >= 0 && box.y >= 0 && box.x + box.width <= width && box.y + box.height <= height).toBe(true);
  await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
  await card(page).waitFor();
}

describe.each([
  ['tablet', tablet],
  ['desk', desktop],
] as const)('at the width of a %s', (width, viewport) => {
  it('opens in one tap from today and from every step of the visit, also where one has scrolled to', async () => {
    const page = await at.signedIn('nurse', '/', viewport);
    await inOneTap(page);
    await back(page).click();
    await page.goto(`${at.url}/people/wilhelmina/visit`);
    const steps = page.getByRole('navigation', { name: 'Steps of the visit' }).getByRole('link');
    await steps.first().waitFor();
    const names = await steps.allTextContents();
    expect(names.length).toBeGreaterThanOrEqual(12);
    for (let index = 0; index < names.length; index += 1) {
      await steps.nth(index).click();
      await page.evaluate(() => window.scrollTo({ top: document.body.scrollHeight }));
      await inOneTap(page);
      await expect.poll(async () => page.evaluate(() => window.scrollY)).toBe(0);
      await back(page).click();
      await steps.nth(index).waitFor();
    }
    await page.context().close();
  });

  it('is read in large black letters on white, with the local guideline first and targets of 48 px', async () => {
    const page = await at.visitor(viewport);
    await page.goto(`${at.url}/anaphylaxis`);
    await card(page).waitFor();
    await checked(page, `anaphylaxis-card-${width}`);
    const shown = page.getByRole('main');
    await expect
      .poll(async () => shown.getByRole('paragraph').first().textContent())
      .toMatch(/^Your local guideline decides/);
    const looks = await shown.evaluate((main) =>
      [main, ...main.querySelectorAll('*')].map((each) => {
        const { color, fontSize } = getComputedStyle(each);
        return { color, size: parseFloat(fontSize), strong: each.matches('li strong') };
      }),
    );
    expect(new Set(looks.map(({ color }) => color))).toEqual(new Set(['rgb(0, 0, 0)']));
    expect(Math.min(...looks.map(({ size }) => size))).toBeGreaterThanOrEqual(15);
    expect(Math.min(...looks.filter(({ strong }) => strong).map(({ size }) => size))).toBeGreaterThanOrEqual(24);
    for (const target of await shown.locator('a, button').all())
      await expect.poll(async () => (await target.boundingBox())?.height).toBeGreaterThanOrEqual(48);
    await page.context().close();
  });
});

it.each([
  ['a telephone', { width: 375, height: 667 }],
  ['a tablet', tablet],
])('on %s the link lies over no button that one has scrolled to', async (_, viewport) => {
  const page = await at.signedIn('nurse', '/people/wilhelmina/visit?step=cannula', viewport);
  await page.getByRole('heading', { name: 'Cannula' }).waitFor();
  const under: string[] = [];
  for (const control of await page.locator('main').locator('button, label:has(input)').all()) {
    // As far down as the page lets it stand: where the link is.
    const met = await control.evaluate((element) => {
      element.scrollIntoView({ block: 'end' });
      const { x, y, width, height } = element.getBoundingClientRect();
      const there = document.elementFromPoint(x + width / 2, y + height - 2);
      return there !== null && (element.contains(there) || there.contains(element));
    });
    if (!met) under.push(await control.innerText());
  }
  expect(under).toEqual([]);
  await page.context().close();
});

it('needs no sign-in, and stands one tap from the sign-in', async () => {
  const page = await at.visitor(tablet);
  await page.goto(at.url);
  await page.getByLabel('Username').fill('half typed');
  await inOneTap(page);
  await expect.poll(async () => page.getByLabel('Username').isVisible()).toBe(false);
  await back(page).click();
  await expect.poll(async () => page.getByLabel('Username').inputValue()).toBe('half typed');
  await page.context().close();
});

it('shows also where the server does not answer any more, with the emergency number of the unit', async () => {
  const { units } = await at.server.read<{ units: { unit: string }[] }>('/api/status');
  await at.server.done('lead', {
    name: 'set unit',
    unit: units[0]?.unit,
    body: { ...thornbeck, emergencyNumber: '01632 960199' },
  });
  const page = await at.signedIn('nurse', '/people/wilhelmina/visit', tablet);
  await page.route('**/api/**', (route) => route.abort());
  await inOneTap(page);
  await page.getByText('01632 960199').waitFor();
  await checked(page, 'anaphylaxis-card-number-tablet');
  await page.context().close();
});

it('stays when the session ends under it, and what was being filled in is there after signing in again', async () => {
  const page = await at.signedIn('nurse', '/people/wilhelmina/visit?step=flush', tablet);
  await page.getByLabel('Saline', { exact: true }).fill('7');
  await inOneTap(page);
  await page.context().clearCookies();
  const refused = page.waitForResponse((answer) => answer.url().includes('/api/') && answer.status() === 401);
  // Somebody else writes in these notes; the screen asks for them anew and learns that its session is over.
  await at.server.done('clerk', {
    name: 'record',
    patient: 'wilhelmina',
    line: { kind: 'contact', effectiveAt: '2026-11-25', body: { telephone: '01632 960221' } },
  });
  await refused;
  await page
    .locator('h1', { hasText: 'Sign in again' })
    .or(page.locator('h2', { hasText: 'Sign in again' }))
    .waitFor({ state: 'attached' });
  await expect.poll(async () => card(page).isVisible()).toBe(true);
  await back(page).click();
  await page.getByLabel('Username').fill(people.nurse.username);
  await page.getByLabel('Password').fill(password);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await expect.poll(async () => page.getByLabel('Saline', { exact: true }).inputValue()).toBe('7');
  await page.context().close();
});

it('prints alone, on one page, with nothing of the patient on it', async () => {
  const page = await at.signedIn('nurse', '/people/wilhelmina/visit', desktop);
  await inOneTap(page);
  await page.emulateMedia({ media: 'print' });
  const printed = await page.locator('body').innerText();
  expect(printed).toMatch(/Adrenaline 500 micrograms/);
  expect(printed).not.toMatch(/Wilhelmina|Print this card|Back to where/);
  const pdf = (await page.pdf({ format: 'A4', preferCSSPageSize: true })).toString('latin1');
  expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
  await page.context().close();
});
