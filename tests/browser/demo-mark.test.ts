/** The word "demo" is in sight on every device, and what is pressed many times an hour fits a gloved finger (48 px, the project's own rule). */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { referralOf, sessionOn, setUp, workUp } from '../../apps/server/test/support/own-server.ts';
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

/** The same service saying that it is the demo: nothing else of its answer is changed. */
async function asDemo(page: Page): Promise<void> {
  await page.route('**/api/status', async (route) => {
    const answer = await route.fetch();
    const said = (await answer.json()) as object;
    await route.fulfill({ response: answer, json: { ...said, demo: true } });
  });
  await page.reload();
  await mark(page).first().waitFor();
}
const mark = (page: Page) => page.getByText('demo · nobody here is real');

/** What a person sees at the middle of it is the mark, not something that lies over it. */
const isOnTop = (page: Page): Promise<boolean> =>
  mark(page)
    .first()
    .evaluate((it) => {
      const { left, top, width, height } = it.getBoundingClientRect();
      return document.elementFromPoint(left + width / 2, top + height / 2) === it;
    });

describe.each([
  ['a desk', desktop],
  ['a tablet', tablet],
  ['a telephone', { width: 390, height: 780 }],
] as const)('on %s', (name, viewport) => {
  it('the mark is in sight on Today, at the visit and on the anaphylaxis card, and the way to the card stays free', async () => {
    const page = await at.signedIn('nurse', '/', viewport);
    await asDemo(page);
    await expect.poll(() => isOnTop(page)).toBe(true);
    await page.goto(`${at.url}/people/wilhelmina/visit`);
    await page.getByRole('heading', { name: 'Arrived' }).waitFor();
    await expect.poll(() => isOnTop(page)).toBe(true);
    await checked(page, `demo-mark-${name.replace(' ', '-')}`);
    await page.getByRole('link', { name: 'Anaphylaxis card' }).click();
    await page.getByRole('heading', { level: 1, name: 'Anaphylaxis' }).waitFor();
    await expect
      .poll(async () => page.getByRole('main').getByText('demo · nobody here is real').isVisible())
      .toBe(true);
  });
});

it.each([
  ['a desk', desktop],
  ['a tablet', tablet],
] as const)('at %s a gloved finger meets who signs, PIN and badge, and leave', async (_, viewport) => {
  const page = await at.signedIn('nurse', '/', viewport);
  const small = await page.getByRole('region', { name: 'At the desk' }).evaluate((desk) =>
    [...desk.querySelectorAll('button, a, select')].flatMap((target) => {
      const { width, height } = target.getBoundingClientRect();
      return Math.min(width, height) < 47.5 ? [`${target.textContent}: ${width} x ${height}`] : [];
    }),
  );
  expect(small).toEqual([]);
});
