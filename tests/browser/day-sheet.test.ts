/** The day sheet on A4 and on US letter paper: as many pages come out as it says, whoever is on the list, and it reads without a screen. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { day, demoSheet } from '../../packages/clinical/src/index.ts';
import { type DaySheetPerson, daySheetHtml } from '../../packages/letters/src/index.ts';
import { accessibilityViolations } from '../support/accessibility.ts';
import { launch, screenshotPath } from '../support/browser.ts';

const somebody: DaySheetPerson = {
  arriveAt: '09:20',
  name: 'Wanda Ferreira',
  born: '30 September 1944',
  number: '999 204 7802',
  dose: 'dose 2 of 3',
  firstTimer: false,
  allergies: 'no known allergies',
  armToAvoid: undefined,
  needs: [],
  nearNames: [],
  readiness: 'ready (as things stood on 24 Nov 2026)',
  order: 'zoledronic acid 5 mg: prescription until 31 Oct 2027',
  leastMinutes: 15,
  questions: demoSheet('any').dayQuestions.map(({ asks }) => asks),
  watchMinutes: 30,
  chair: undefined,
  nurse: 'Casimir Holt',
  gone: false,
  recorded: {},
  running: undefined,
};
/** More to say than anybody's notes ever held. */
const wordy: DaySheetPerson = {
  ...somebody,
  name: 'Wilhelmina Theodora Featherstonehaugh-Arkwright de la Poer',
  allergies:
    'allergic to penicillin (rash over the whole body and a swollen face), chlorhexidine (blisters), latex (wheeze), plaster (itch), trimethoprim (not known)',
  armToAvoid: 'left arm (lymph nodes removed in 2011, and a fistula planned)',
  needs: ['hoist', 'wide chair', 'hears badly on the left', 'cannot lie flat', 'speaks Welsh'],
  nearNames: ['Wilhelmina Featherstone, born 30 September 1944', 'Wilma Arkwright, born 1 October 1944'],
  readiness:
    'cannot say: creatinine up from 62 to 91 umol/L on their own baseline, ask a prescriber; vitamin D loading is not finished, possible from Sat 9 Jan 2027 (as things stood on 24 Nov 2026)',
};

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await launch();
  page = await browser.newPage({ viewport: { width: 794, height: 1123 } });
});
afterAll(() => browser.close());

const show = (people: readonly DaySheetPerson[], language: 'en-GB' | 'en-US' = 'en-GB'): Promise<void> =>
  page.setContent(
    daySheetHtml({
      language,
      unit: { name: 'Thornbeck Day Unit', telephone: '01632 960100', demo: true },
      on: day('2026-11-25'),
      printedAt: 'Wed 25 Nov 2026, 08:40',
      commit: 4711,
      protocolVersion: 'thornbeck-1',
      people,
    }),
  );

/** Pages of a PDF: the objects that are one (ISO 32000-1, 7.7.3.3). */
const pagesOf = (pdf: Buffer): number => [...pdf.toString('latin1').matchAll(/\/Type\s*\/Page[\s/>]/g)].length;

/** The page a PDF was set on, in points: A4 is 595 x 842 (ISO 216), US letter 612 x 792 (ANSI A). */
const boxOf = (pdf: Buffer): string | undefined =>
  /\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/
    .exec(pdf.toString('latin1'))
    ?.slice(1)
    .map((points) => Math.round(Number(points)))
    .join(' x ');

const papers = { 'en-GB': '595 x 842', 'en-US': '612 x 792' } as const;

describe.each(['en-GB', 'en-US'] as const)('on the paper of %s', (language) => {
  it.each([
    ['nobody', [], 1],
    ['fourteen people, on one page of the list', Array.from({ length: 14 }, () => somebody), 1],
    ['fourteen people of whom there is much to say', Array.from({ length: 14 }, () => wordy), 3],
  ])('%s: as many pages as it says, each numbered', async (_, people, pagesOfList) => {
    await show(people, language);
    const said = await page.locator('.head').allTextContents();
    const pdf = await page.pdf({ preferCSSPageSize: true });
    const pages = pagesOf(pdf);
    expect(boxOf(pdf)).toBe(papers[language]);
    expect(pages).toBe(pagesOfList + people.length);
    said.forEach((head, index) => expect(head).toContain(`page ${index + 1} of ${pages}`));
    said.forEach((head) => expect(head).toContain('printed Wed 25 Nov 2026, 08:40 · last commit 4711'));
  });
});

describe('on paper', () => {
  it('in American it says what one reads there', async () => {
    await show([wordy], 'en-US');
    await expect.poll(async () => page.locator('body').innerText()).toMatch(/Wednesday, November 25, 2026/);
    const text = await page.locator('body').innerText();
    expect(text).toContain('clear and colorless');
    expect(text).toContain('card with whom to call given');
  });

  it('is black on white, and reads well', async () => {
    await show([wordy, { ...somebody, recorded: { arrive: '09:22 Nora Nurse' }, running: 'started 09:50 Nora Nurse' }]);
    await page.screenshot({ path: screenshotPath('day-sheet'), fullPage: true });
    const colours = await page.locator('main *').evaluateAll((all) => [
      ...new Set(
        all.flatMap((one) => {
          const { color, backgroundColor, borderTopColor } = getComputedStyle(one);
          return [color, backgroundColor, borderTopColor];
        }),
      ),
    ]);
    expect(colours.toSorted()).toEqual(['rgb(0, 0, 0)', 'rgba(0, 0, 0, 0)']);
    expect(await accessibilityViolations(page)).toEqual([]);
  });
});
