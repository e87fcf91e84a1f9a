/** Without a mouse, on paper, and on a phone's width. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { referralOf, sessionOn, setUp, workUp } from '../../apps/server/test/support/own-server.ts';
import { screenshotPath } from '../support/browser.ts';
import { type Service, checked, service, tablet } from '../support/service.ts';

let at: Service;
beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await at.server.done('clerk', referralOf('wilhelmina'));
  await workUp(at.server, 'wilhelmina');
  await at.server.done('nurse', sessionOn('thornbeck-2026-12-02', '2026-12-02'));
});
afterAll(() => at.close());

it('a place is booked by keyboard alone, and the focus can always be seen', async () => {
  const page = await at.signedIn('clerk', '/sessions');
  /** Presses Tab until what has the focus bears this name; every stop on the way must show its focus. */
  const reach = async (name: RegExp): Promise<void> => {
    for (let presses = 0; presses < 60; presses += 1) {
      await page.keyboard.press('Tab');
      const here = await page.evaluate(() => {
        const element = document.activeElement as HTMLElement;
        const style = getComputedStyle(element);
        const words = element.getAttribute('aria-label') ?? element.textContent ?? '';
        const labelled = (element as HTMLInputElement).labels?.[0]?.textContent ?? '';
        return {
          words: `${words} ${labelled}`,
          ring: style.outlineStyle !== 'none' || style.boxShadow !== 'none',
          type: (element as HTMLInputElement).type,
        };
      });
      // A radio shows its focus on the label that carries it, which a style of the input itself cannot tell.
      const seen = here.ring || here.type === 'radio';
      expect(seen, `focus on "${here.words.slice(0, 60)}" cannot be seen`).toBe(true);
      if (name.test(here.words)) return;
    }
    throw new Error(`${name} is not reached by Tab`);
  };
  /** The new screen is there, and the keyboard has begun at its top. */
  const opens = async (name: RegExp): Promise<void> => {
    await page.getByRole('heading', { level: 1, name }).waitFor();
    await page.waitForFunction(() => document.activeElement?.closest('#content') !== null);
  };
  await page.keyboard.press('/');
  await page.keyboard.type('arkwright');
  await page.getByRole('option', { name: /Arkwright-Poe/ }).waitFor();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await opens(/Arkwright-Poe/);
  await reach(/^Book a place/);
  await page.keyboard.press('Enter');
  await opens(/^Book a place/);
  await page.getByRole('button', { name: /Wed 2 Dec 2026/ }).waitFor();
  await reach(/Wed 2 Dec 2026/);
  await page.keyboard.press('Enter');
  await page.getByRole('radio').first().waitFor();
  await reach(/09:0/);
  await page.keyboard.press('Space');
  await reach(/^Book this place/);
  await page.keyboard.press('Enter');
  await expect
    .poll(
      async () =>
        (await at.server.read<{ standing: { standing: string } }>('/api/people/wilhelmina')).standing.standing,
    )
    .toBe('booked');
});

it('the first Tab of a page offers to skip to its content', async () => {
  const page = await at.signedIn('nurse', '/people');
  await page.keyboard.press('Tab');
  await expect.poll(async () => page.evaluate(() => document.activeElement?.textContent)).toMatch(/skip|content|page/i);
  await page.keyboard.press('Enter');
  expect(
    await page.evaluate(() => document.activeElement?.closest('main') !== null || document.activeElement?.id),
  ).toBeTruthy();
});

describe('on paper', () => {
  it.each([
    ['people', '/people'],
    ['session', '/sessions/thornbeck-2026-12-02'],
    ['recall', '/recall'],
    ['person', '/people/wilhelmina'],
  ])('%s prints its title and its list, without what only a screen needs', async (name, path) => {
    const page = await at.signedIn('nurse', path);
    await page.waitForLoadState('networkidle');
    await page.emulateMedia({ media: 'print' });
    await expect.poll(async () => page.getByRole('heading', { level: 1 }).isVisible()).toBe(true);
    await expect.poll(async () => page.getByRole('navigation', { name: 'Screens' }).isVisible()).toBe(false);
    await page.screenshot({ path: screenshotPath(`print-${name}`), fullPage: true });
    const pdf = await page.pdf({ format: 'A4' });
    expect(pdf.byteLength).toBeGreaterThan(1000);
    await page.context().close();
  });
});

it.each([
  ['today', '/'],
  ['people', '/people'],
  ['person', '/people/wilhelmina'],
  ['session', '/sessions/thornbeck-2026-12-02'],
])('%s reflows at 320 px without scrolling sideways', async (name, path) => {
  const page = await at.signedIn('nurse', path, { width: 320, height: 720 });
  await checked(page, `phone-${name}`);
  await page.context().close();
});

it('on a tablet held upright the screens stand in one line, and what is behind "More" is reached by keys', async () => {
  const page = await at.signedIn('nurse', '/', tablet);
  const about = page.getByRole('navigation', { name: 'Screens' });
  const more = about.getByRole('button', { name: /^More/ });
  await more.waitFor();
  const tops = await about
    .locator('ul > li')
    .evaluateAll((all) =>
      all.flatMap((one) => ((one as HTMLElement).offsetHeight > 0 ? [one.getBoundingClientRect().bottom] : [])),
    );
  expect(Math.max(...tops) - Math.min(...tops)).toBeLessThan(8);
  await more.press('Enter');
  await about.getByRole('link', { name: 'Stock' }).waitFor();
  await page.keyboard.press('Escape');
  await about.getByRole('link', { name: 'Stock' }).waitFor({ state: 'hidden' });
  await expect.poll(async () => more.evaluate((button) => button === document.activeElement)).toBe(true);
  await more.press('Enter');
  await about.getByRole('link', { name: 'Stock' }).press('Enter');
  await page.getByRole('heading', { level: 1, name: /Stock/ }).waitFor();
  await about.getByRole('button', { name: 'More: Stock' }).waitFor();
  await page.close();
});
