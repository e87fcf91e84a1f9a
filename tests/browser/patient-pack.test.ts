/** The patient pack: asked for, looked at as it will be on paper, given, written down; each document checked as a page of its own. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { referralOf, setUp, workUp } from '../../apps/server/test/support/own-server.ts';
import { hands } from '../support/hands.ts';
import { type Service, checked, desktop, service, tablet } from '../support/service.ts';

let at: Service;
const documentPath = (query = ''): string => `/api/people/wilhelmina/patient-pack/document?${query}`;

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await at.server.done('clerk', referralOf('wilhelmina'));
  await workUp(at.server, 'wilhelmina');
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
    await sees(/Not printed: next year\./);
    const paper = page.frameLocator('iframe');
    await paper.getByText('Ask your nurse how much paracetamol').waitFor();
    await pick('Liver trouble, a lot of alcohol, or eating too little?', 'No, none of these');
    await paper.getByText('1 or 2 tablets of paracetamol 500 mg, up to 4 times a day').waitFor();
    await pick('How large', 'One easy page');
    await paper.getByRole('heading', { level: 1, name: 'Your drip on one page' }).waitFor();
    await press('I gave it to them');
    await page
      .getByText(/patient pack given: easy page, large print, en-GB, pack-1/)
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

  it('as a PDF: tagged, titled, in its language, with page numbers', async () => {
    const page = await opened('liver=fine', desktop);
    const pdf = (await page.pdf({ preferCSSPageSize: true, tagged: true, outline: true })).toString('latin1');
    expect(pdf).toMatch(/\/MarkInfo <<\/Type \/MarkInfo\s*\/Marked true>>/);
    expect(pdf).toContain('/Lang (en-GB)');
    expect(pdf.match(/\/Type \/Page\b/g)?.length).toBeGreaterThanOrEqual(3);
    await page.context().close();
  });

  it('reads without JavaScript, and small: under 60 kB', async () => {
    const answer = await at.server.ask(documentPath(), { as: 'nurse' });
    expect(answer.body.length).toBeLessThan(60_000);
    expect(answer.body).not.toContain('<script');
  });
});
