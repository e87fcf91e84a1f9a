/** The review of a course on its sheet: why now, what is known and missing, a decision with what follows said before it is signed. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { referralOf, setUp } from '../../apps/server/test/support/own-server.ts';
import { hands } from '../support/hands.ts';
import { screenshotPath } from '../support/browser.ts';
import { type Service, checked, desktop, service, tablet } from '../support/service.ts';

let at: Service;
const sheetPath = '/people/wilhelmina/review';

const line = (kind: string, effectiveAt: string, body: object) => ({ kind, body, effectiveAt });
const scan = (on: string, site: string, value: string, tScore: string) =>
  line('bone-density', on, {
    site,
    ...(site === 'lumbar spine' ? {} : { side: 'left' }),
    scanner: 'Thornbeck 1',
    density: { comparator: '', value, unit: 'g/cm2' },
    tScore,
  });
const marker = (on: string, value: string) =>
  line('result', on, { analyte: 'CTX', quantity: { comparator: '', value, unit: 'ng/L' } });
const standing = async (): Promise<string> =>
  (await at.server.read<{ standing: { standing: string } }>('/api/people/wilhelmina')).standing.standing;

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await at.server.done('clerk', referralOf('wilhelmina'));
  const record = (as: 'nurse' | 'prescriber', one: object) =>
    at.server.done(as, { name: 'record', patient: 'wilhelmina', line: one });
  await record('nurse', line('triage', '2026-11-20', { outcome: 'accepted' }));
  const { entries } = await at.server.done('nurse', {
    name: 'record together',
    patient: 'wilhelmina',
    lines: [
      ...['2024-03-14', '2025-03-14', '2026-03-28'].map((on) =>
        line('dose', on, { medicine: 'zoledronic acid 5 mg', setting: 'ward', batch: 'PA-1804' }),
      ),
      line('medicine', '2019-02-01', {
        name: 'alendronic acid 70 mg weekly',
        sort: 'bisphosphonate tablet',
        stoppedOn: '2022-02-01',
      }),
      line('fracture', '2018-12-09', { site: 'wrist', dateKnown: true }),
      line('fracture', '2025-08-02', { site: 'shoulder', dateKnown: true }),
      scan('2024-02-20', 'total hip', '0.642', '-2.5'),
      scan('2026-10-06', 'total hip', '0.612', '-2.7'),
      scan('2024-02-20', 'lumbar spine', '0.850', '-1.8'),
      scan('2026-10-06', 'lumbar spine', '0.861', '-1.7'),
      marker('2024-02-20', '410'),
      marker('2026-10-06', '150'),
      line('adherence', '2026-10-06', {
        medicine: 'calcium and vitamin D',
        taken: 'nearly all',
        source: 'told by the person',
      }),
    ],
  });
  const results = entries.filter(({ kind }) => kind === 'result').map(({ id }) => id);
  await record('nurse', line('results-signed', '2026-11-20', { results }));
});
afterAll(() => at.close());

describe('the sheet', () => {
  it('is reached from the person, and from the list of those in review', async () => {
    const page = await at.signedIn('nurse', '/people/wilhelmina');
    const { follow, sees } = hands(page);
    await follow('Open the review');
    await page.getByRole('heading', { level: 1, name: 'Review of the course' }).waitFor();
    await sees('3 doses of 3 given: review before another, since 28 Mar 2026.');
    await page.goto(`${at.url}/recall`);
    await follow(/^open the review/);
    await page.getByRole('heading', { level: 1, name: 'Review of the course' }).waitFor();
    await page.context().close();
  });

  it.each([
    ['desk', desktop],
    ['tablet', tablet],
    ['phone', { width: 320, height: 640 }],
  ] as const)('passes the checks at the width of a %s', async (width, viewport) => {
    const page = await at.signedIn('prescriber', sheetPath, viewport);
    await hands(page).pick('What is decided', 'A planned break');
    await checked(page, `review-${width}`);
    await page.context().close();
  });

  it('says what is known, each line with its entry, and which criteria are met', async () => {
    const page = await at.signedIn('prescriber', sheetPath);
    const { sees } = hands(page);
    await sees('dose 3 on 28 Mar 2026, 14 days late');
    await sees(/0\.612 g\/cm2, T -2\.7 on 6 Oct 2026: -4\.7 % since 20 Feb 2024 .*within the least significant change/);
    await sees(/fallen by 63 %, more than chance/);
    await sees('Does not meet the rule for treatment failure.');
    const row = page.getByRole('row').filter({ hasText: 'hip T-score of -2.5 or below' });
    await expect.poll(async () => row.getByRole('cell').first().textContent()).toContain('met');
    await page.getByRole('link', { name: /^in the notes ?: dose 3 on/ }).click();
    await page.waitForURL(/#entry-/);
    await page
      .getByText(/zoledronic acid 5 mg given on 28 Mar 2026/)
      .first()
      .waitFor();
    await page.context().close();
  });

  it('on paper there is no form and no link to press', async () => {
    const page = await at.signedIn('prescriber', sheetPath);
    await page.emulateMedia({ media: 'print' });
    await expect.poll(async () => page.getByRole('button', { name: 'Sign the review' }).isVisible()).toBe(false);
    await expect.poll(async () => page.getByRole('heading', { name: 'What is known' }).isVisible()).toBe(true);
    await page.screenshot({ path: screenshotPath('review-paper'), fullPage: true });
    await page.context().close();
  });

  it('what is missing leads to its form; written, it is missing no longer', async () => {
    const page = await at.signedIn('nurse', sheetPath);
    const { follow, sees, measure, pick, press } = hands(page);
    await sees('A prescriber decides and signs. This sheet can be printed for them.');
    await follow(/^write it ?: Height not measured in the last year/);
    await measure('Height', '157.5', 'cm');
    await pick('Which height', 'measured now');
    await hands(page).fill('Measured on', '25 11 2026');
    await press('Record');
    await expect
      .poll(async () =>
        (await at.server.read<{ gaps: { says: string }[] }>(`/api${sheetPath}`)).gaps.map(({ says }) => says),
      )
      .not.toContain('Height not measured in the last year.');
    await page.context().close();
  });
});

describe('the decision', () => {
  let page: Page;
  beforeAll(async () => {
    page = await at.signedIn('prescriber', sheetPath);
  });

  it('says what follows before it is signed', async () => {
    const { pick, fill, sees } = hands(page);
    await pick('What is decided', 'Carry on');
    await fill('Up to how many doses in this course', '6');
    await sees('Dose 4 of 6 is due on 28 Mar 2027; the recall begins on 17 Jan 2027.');
    await pick('What is decided', 'Another treatment');
    await fill('To which treatment', 'denosumab');
    await fill('It starts on', '10 1 2027');
    await sees(/denosumab starts on 10 Jan 2027/);
    await pick('What is decided', 'A planned break');
    await sees('No dose, and nobody is recalled, until the review on 28 Mar 2029.');
  });

  it('without saying in which capacity, it is refused beside the field', async () => {
    const { fill, press, sees } = hands(page);
    await fill('Reason', 'three doses given, no fracture of hip or spine');
    await press('Sign the review');
    await sees('Not recorded.');
    await sees(/it does not say in which capacity it was decided/i);
    await checked(page, 'review-refused');
    await expect.poll(async () => standing()).toBe('in review');
  });

  it('signed with the keyboard alone, the person is on a planned break with its end', async () => {
    await page.getByRole('radio', { name: 'specialist', exact: true }).focus();
    await page.keyboard.press('Space');
    for (let presses = 0; presses < 12; presses += 1) {
      await page.keyboard.press('Tab');
      if ((await page.evaluate(() => document.activeElement?.textContent)) === 'Sign the review') break;
    }
    await page.keyboard.press('Enter');
    await page
      .getByText(/on planned break: review on 28 Mar 2029/i)
      .first()
      .waitFor();
    await expect.poll(async () => standing()).toBe('on planned break');
    await checked(page, 'person-on-break');
  });

  it('the letter to the family doctor says what was decided and what follows, and goes into the notes', async () => {
    await page.goto(`${at.url}${sheetPath}`);
    const { follow, press } = hands(page);
    await follow('letter about the newest review');
    const letter = page.frameLocator('iframe');
    await letter.getByText('a planned break until 28 Mar 2029', { exact: false }).first().waitFor();
    await letter.getByText('until the review on 28 Mar 2029', { exact: false }).waitFor();
    await checked(page, 'review-letter');
    await press('Sign the letter');
    await page.getByText('letter to the family doctor about review').first().waitFor();
    // Nobody on a planned break is due, and nobody is recalled.
    await expect
      .poll(async () => page.getByText(/3 of 3 planned doses given/).textContent())
      .not.toMatch(/due|recall from/);
  });

  it('a fracture told after the review opens another at once, also of the day of the review, and the sheet says why', async () => {
    await at.server.done('nurse', {
      name: 'record',
      patient: 'wilhelmina',
      line: line('fracture', '2026-11-25', { site: 'wrist', dateKnown: true }),
    });
    await expect.poll(standing).toBe('in review');
    await page.goto(`${at.url}${sheetPath}`);
    await hands(page).sees('wrist fracture during the break, 25 Nov 2026, since 25 Nov 2026.');
    await checked(page, 'review-in-a-break');
  });
});
