/** Finding someone from anywhere, seeing where everyone is, and calling back who is due. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { referralOf, setUp, workUp } from '../../apps/server/test/support/own-server.ts';
import { enteredBefore } from '../../apps/server/test/support/entered-before.ts';
import { hands } from '../support/hands.ts';
import { type Service, checked, service } from '../support/service.ts';

let at: Service;
let page: Page;

async function doses(patient: string, ...days: string[]): Promise<void> {
  for (const effectiveAt of days) {
    const body = { medicine: 'zoledronic acid 5 mg', setting: 'elsewhere', batch: 'PA-1180' };
    await at.server.done('nurse', { name: 'record', patient, line: { kind: 'dose', body, effectiveAt } });
  }
}

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await at.server.done('clerk', referralOf('wilhelmina'));
  await at.server.done('nurse', {
    name: 'record',
    patient: 'wilhelmina',
    line: {
      kind: 'triage',
      body: { outcome: 'accepted' },
      effectiveAt: '2026-11-24',
    },
  });
  await at.server.done('clerk', {
    ...referralOf('odile', { given: 'Odile', family: 'Marchbanks', born: '1944-03-17', number: '999 300 1122' }),
    identity: {
      family: 'Marchbanks',
      given: 'Odile',
      formerNames: ['Fenwright'],
      born: '1944-03-17',
      sex: 'female',
      number: '999 300 1122',
    },
  });
  await workUp(at.server, 'odile');
  await doses('odile', '2025-12-20');
  await at.server.done(
    'clerk',
    referralOf('three', { given: 'Theda', family: 'Oakenby', born: '1939-05-05', number: '999 300 1133' }),
  );
  await workUp(at.server, 'three');
  await doses('three', '2023-10-01', '2024-10-03', '2025-10-06');
  await at.server.done(
    'clerk',
    referralOf('late', { given: 'Latimer', family: 'Quayle', born: '1947-01-09', number: '999 300 1144' }),
  );
  await workUp(at.server, 'late');
  await doses('late', '2025-08-01');
  page = await at.signedIn('nurse', '/recall');
});
afterAll(() => at.close());

describe('search from anywhere, by keyboard alone', () => {
  it.each([
    ['her name', 'march', /Odile Marchbanks/],
    ['a former name', 'fenwright', /Odile Marchbanks/],
    ['a number, with or without its spaces', '9993001122', /Odile Marchbanks/],
    ['a birth date', '17 March 1944', /Odile Marchbanks/],
    ['a birth date in figures', '17/03/1944', /Odile Marchbanks/],
  ])('%s', async (_by, typed, found) => {
    await page.goto(`${at.url}/sessions`);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await page.keyboard.press('/');
    await page.keyboard.type(typed);
    await page.getByRole('option', { name: found }).first().waitFor();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: found }).waitFor();
    expect(page.url(), 'no name stands in an address').toBe(`${at.url}/people/odile`);
  });

  it('Ctrl K leads there too; the arrows walk through namesakes and Escape leaves', async () => {
    await page.goto(`${at.url}/recall`);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await page.keyboard.press('Control+k');
    await page.keyboard.type('999 300');
    const options = page.getByRole('listbox', { name: 'People found' }).getByRole('option');
    await expect.poll(() => options.count()).toBe(3);
    const chosen = () =>
      page.getByRole('listbox', { name: 'People found' }).getByRole('option', { selected: true }).innerText();
    const first = await chosen();
    await page.keyboard.press('ArrowDown');
    await expect.poll(async () => chosen()).not.toBe(first);
    await page.keyboard.press('ArrowUp');
    await expect.poll(async () => chosen()).toBe(first);
    await page.keyboard.press('Escape');
    await expect.poll(async () => options.count()).toBe(0);
    const focused = () =>
      page.evaluate(() => document.activeElement?.getAttribute('role') ?? document.activeElement?.tagName);
    await expect.poll(async () => focused(), { message: 'the field lets go of the focus' }).not.toBe('combobox');
    const link = page.getByRole('navigation', { name: 'Screens' }).getByRole('link', { name: 'Sessions' });
    await link.focus();
    await page.keyboard.press('/');
    await page.keyboard.type('999');
    await page.keyboard.press('Escape');
    await expect
      .poll(async () => link.evaluate((element) => element === document.activeElement), { message: 'and leads back' })
      .toBe(true);
  });

  it('says so when nobody is found', async () => {
    await page.goto(`${at.url}/recall`);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await page.keyboard.press('/');
    await page.keyboard.type('nobody of this name');
    await page
      .getByText(/nobody|no one|not found/i)
      .first()
      .waitFor();
    await checked(page, 'finding-nobody');
  });
});

it('everyone has exactly one standing, the counts add up, and nobody is unaccounted for', async () => {
  await page.goto(`${at.url}/people`);
  await page
    .getByRole('row', { name: /Marchbanks/ })
    .first()
    .waitFor();
  const { total, standings, unaccounted } = await at.server.read<{
    total: number;
    standings: { standing: string; count: number }[];
    unaccounted: number;
  }>('/api/people');
  expect(total).toBe(4);
  expect(standings.reduce((sum, { count }) => sum + count, 0)).toBe(4);
  expect(unaccounted).toBe(0);
  const chips = await page.getByRole('navigation', { name: 'Where they are' }).getByRole('link').allInnerTexts();
  const [everyone, ...each] = chips.map((chip) => Number(/\d+$/.exec(chip)?.[0]));
  expect([everyone, each.reduce((sum, one) => sum + one, 0)]).toEqual([4, 4]);
  await expect.poll(async () => page.getByRole('row').count()).toBe(1 + total);
  await expect.poll(async () => page.getByText(/not accounted for/i).count()).toBe(0);
  await checked(page, 'finding-people');
});

it('a standing filters the list', async () => {
  await page
    .getByRole('link', { name: /^in review/ })
    .or(page.getByRole('button', { name: /^in review/ }))
    .first()
    .click();
  await page
    .getByRole('row', { name: /Oakenby/ })
    .first()
    .waitFor();
  // She stood there before as well: the list is the new one once the other is gone.
  await expect.poll(() => page.getByRole('row', { name: /Marchbanks/ }).count()).toBe(0);
});

it('recall: who is due with the dates for bloods, who is overdue, who is in review after three doses', async () => {
  await page.goto(`${at.url}/recall`);
  await page
    .getByRole('row', { name: /Marchbanks/ })
    .getByText(/20 Dec 2026/)
    .first()
    .waitFor();
  await page
    .getByRole('row', { name: /Marchbanks/ })
    .getByText(/bloods/)
    .first()
    .waitFor();
  await page
    .getByRole('row', { name: /Quayle/ })
    .getByText(/days ago/)
    .first()
    .waitFor();
  const { inReview, people } = await at.server.read<{ inReview: { name: string }[]; people: { name: string }[] }>(
    '/api/recall',
  );
  await page
    .getByRole('region', { name: /^In review/ })
    .getByRole('row', { name: /Oakenby/ })
    .waitFor();
  expect(inReview.map(({ name }) => name).join()).toContain('Oakenby');
  expect(people.map(({ name }) => name).join()).not.toContain('Oakenby');
  await checked(page, 'finding-recall');
});

it('a call is logged where she stands, and is in the notes', async () => {
  const row = page.getByRole('row', { name: /Marchbanks/ }).first();
  await row.getByRole('button', { name: /^Log a call/ }).click();
  await checked(page, 'finding-call');
  const form = page.locator('form').last();
  const { pick, press } = hands(form);
  await pick(/route|how/i, 'telephone');
  await pick(/reached/i, 'yes');
  await press(/record|write|log/i);
  await expect
    .poll(async () =>
      (await at.server.read<{ entries: { kind: string }[] }>('/api/people/odile')).entries.some(
        ({ kind }) => kind === 'call',
      ),
    )
    .toBe(true);
});

it('what one person writes appears on the other screen without asking', async () => {
  await page.goto(`${at.url}/people/wilhelmina`);
  await page.getByText('allergies not asked').waitFor();
  const checker = await at.signedIn('checker', '/people/wilhelmina?record=allergy');
  const form = hands(checker.getByRole('region', { name: 'Record: allergy' }));
  await form.pick('Anything known they react to?', 'other');
  await form.fill('What they react to', 'penicillin');
  await form.pick('Is it a medicine, and which?', 'medicine not for bones');
  await form.fill('Reaction', 'rash');
  await form.press('Record');
  await page
    .getByText(/penicillin/)
    .first()
    .waitFor();
  await checker.context().close();
});

it('somebody of whom nothing says what comes next, nor where, is counted at every unit: on Today and in the list', async () => {
  const identity = { given: 'Una', family: 'Spoken', born: '1950-01-09', sex: 'female', number: '999 204 7900' };
  await enteredBefore(at.server, 'una', { identity }, '2026-11-20');
  await page.goto(`${at.url}/people`);
  await page.getByText(/^1 person is not accounted for: nobody owns what happens next/).waitFor();
  await page.goto(`${at.url}/`);
  await page.getByRole('link', { name: /people not accounted for/ }).click();
  await page.getByRole('row', { name: /Spoken/ }).waitFor();
});
