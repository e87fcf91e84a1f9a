/** "Why?" opens the working wherever a verdict is shown: what went in with its entry, the sum, the threshold, its source, cautions. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { referralOf, sessionOn, setUp, workUp } from '../../apps/server/test/support/own-server.ts';
import { type Service, checked, desktop, service, tablet } from '../support/service.ts';

let at: Service;
let page: Page;

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await at.server.done('clerk', referralOf('wilhelmina'));
  await workUp(at.server, 'wilhelmina');
  await at.server.done('clerk', sessionOn('soon', '2026-11-26'));
  await at.server.done('clerk', sessionOn('later', '2026-12-01'));
  await at.server.done('clerk', { name: 'book', patient: 'wilhelmina', session: 'soon', place: 1 });
  const symptom = { kind: 'symptom', body: { what: 'eye pain or redness' }, effectiveAt: '2026-11-25' };
  await at.server.done('nurse', { name: 'record', patient: 'wilhelmina', line: symptom });
  page = await at.signedIn('nurse', '/people');
});
afterAll(() => at.close());

const places: readonly (readonly [string, string])[] = [
  ['the list of people', '/people'],
  ['a session', '/sessions/soon'],
  ['today, in the trouble ahead', '/'],
  ['a booking', '/people/wilhelmina/book?session=later'],
];

describe('why? at a verdict', () => {
  it.each(places)('%s: the working with its entry, threshold, source and cautions, by keyboard', async (name, path) => {
    await page.goto(`${at.url}${path}`);
    const why = page
      .locator('main summary')
      .filter({ hasText: /^why\?/ })
      .first();
    await why.waitFor();
    await why.focus();
    await page.keyboard.press('Enter');
    const eyes = page.getByText(/Symptoms not cleared: eye pain/).first();
    await eyes.waitFor();
    const working = page
      .locator('li')
      .filter({ hasText: /^Kidney function/ })
      .locator('details')
      .first();
    await working.locator('summary').click();
    const text = await working.innerText();
    expect(text).toMatch(/what went in/);
    expect(text).toMatch(/creatinine.*70 umol\/L/s);
    expect(text).toMatch(/source:/);
    expect(text).toMatch(/protocol thornbeck-1/);
    const entry = working.getByRole('link', { name: 'entry' }).first();
    await expect.poll(async () => entry.getAttribute('href')).toMatch(/^\/people\/wilhelmina#entry-/);
    await checked(page, `why-${name.replaceAll(/\W+/g, '-')}`);
    await page.setViewportSize(tablet);
    await checked(page, `why-${name.replaceAll(/\W+/g, '-')}-tablet`);
    await page.setViewportSize(desktop);
  });
});

describe('body, kidneys and bone on the page about a person', () => {
  it('tells each figure with its day, and behind a tap the sum with its numbers and its source', async () => {
    await page.goto(`${at.url}/people/wilhelmina`);
    const reading = page.getByRole('region', { name: 'Body, kidneys and bone' });
    await reading.getByText('creatinine clearance, umol/L form').first().waitFor();
    const says = await reading.innerText();
    expect(says).toMatch(/creatinine\s+70 umol\/L\s+sample of/);
    expect(says).toMatch(/least weight that passes with this creatinine\s+[\d.]+ kg/);
    expect(says).toMatch(/eGFR 2021 \(never decides\)\s+[\d.]+ mL\/min\/1\.73 m2/);
    const sums = reading.locator('summary').filter({ hasText: 'Kidneys' });
    await sums.focus();
    await page.keyboard.press('Enter');
    await reading.getByText(/\(140 - \d+\) x [\d.]+ kg x 1\.04 \/ 70 umol\/L = /).waitFor();
    await reading
      .getByText(/Cockcroft and Gault 1976, Nephron 16:31/)
      .first()
      .waitFor();
    await checked(page, 'reading');
    await page.setViewportSize(tablet);
    await checked(page, 'reading-tablet');
    await page.setViewportSize(desktop);
  });
});
