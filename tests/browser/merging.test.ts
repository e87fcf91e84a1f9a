/** One person in two records: seen, compared, said by two people, read as one, taken back; a result moved to whose it is. */
import type { PersonView } from '@twelvemonth/exchange';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { password, people, referralOf, setUp, workUp } from '../../apps/server/test/support/own-server.ts';
import { hands } from '../support/hands.ts';
import { type Service, checked, service, tablet } from '../support/service.ts';

let at: Service;
let page: Page;
const second = '999 204 9913';

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await at.server.done('clerk', referralOf('kept'));
  await workUp(at.server, 'kept');
  await at.server.done('clerk', {
    ...referralOf('second', { family: 'Arkwright Poe', number: second }),
    notTheSameAs: ['kept'],
  });
  const body = { medicine: 'zoledronic acid 5 mg', setting: 'ward' };
  await at.server.done('nurse', {
    name: 'record',
    patient: 'second',
    line: { kind: 'dose', body, effectiveAt: '2026-05-04' },
  });
  page = await at.signedIn('clerk', '/people/kept');
});
afterAll(() => at.close());

const notes = (patient: string): Promise<PersonView> => at.server.read<PersonView>(`/api/people/${patient}`);

describe('one person in two records', () => {
  it('someone notices: the other notes are found by number and noted, by keyboard alone', async () => {
    const { sees } = hands(page);
    await page.getByRole('link', { name: 'entered twice?' }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: 'Entered twice?' }).waitFor();
    await page.getByLabel('The other notes').focus();
    await page.keyboard.type(second);
    const found = page.getByRole('button', { name: /Wilhelmina Arkwright Poe/ });
    await found.waitFor();
    await checked(page, 'merging-found');
    await found.focus();
    await page.keyboard.press('Enter');
    await page.getByLabel('Why they may be one person').focus();
    await page.keyboard.type('same telephone');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: 'One person or two?' }).waitFor();
    await sees('Possible duplicate.');
    await expect.poll(async () => (await notes('kept')).readiness?.verdict).toBe('cannot say');
  });

  it('the two stand side by side, at both widths, and the person’s page says what is open', async () => {
    const row = page.getByRole('row', { name: /^number/ });
    await expect.poll(async () => row.innerText()).toMatch(/999 204 7713.*999 204 9913.*differs/s);
    await checked(page, 'merging-compare-desktop');
    const narrow = await at.signedIn('clerk', '/people/kept/compare/second', tablet);
    await narrow.getByRole('row', { name: /^number/ }).waitFor();
    await checked(narrow, 'merging-compare-tablet');
    await narrow.goto(`${at.url}/people/second`);
    await hands(narrow).sees('Possible duplicate: cannot say.');
    await checked(narrow, 'merging-open-tablet');
    await narrow.close();
  });

  it('one person is not enough, and what does not agree is refused', async () => {
    const { pick, tickIn, fill, press, sees } = hands(page);
    await pick('You have compared them: they are', 'one person');
    await tickIn('What agrees', 'number');
    await tickIn('What agrees', 'telephone');
    await fill('How you know', 'rang her: entered twice');
    await press('Say so');
    await sees(/The number differs/);
    await checked(page, 'merging-refused');
    await page.getByRole('group', { name: 'What agrees' }).getByRole('checkbox', { name: 'number' }).uncheck();
    await tickIn('What agrees', 'birth date');
    await press('Say so');
    await page.getByRole('heading', { level: 1, name: 'Wilhelmina Arkwright-Poe' }).waitFor();
    await expect.poll(async () => (await notes('kept')).lookAlikes[0]?.answer).toBe('proposed');
    await expect.poll(async () => (await notes('kept')).readiness?.verdict).toBe('cannot say');
  });

  it('the second person compares, signs with a name of their own, and the two are read as one', async () => {
    const { pick, tickIn, fill, press, sees } = hands(page);
    await page.getByRole('link', { name: /^compare/ }).click();
    await pick('You have compared them: they are', 'one person, as was said');
    await tickIn('What agrees', 'birth date');
    await tickIn('What agrees', 'family doctor');
    await fill('How you know', 'letter of her surgery');
    await fill('Your username', people.clerk.username);
    await fill('Your password', password);
    await press('Confirm: one person');
    await sees(/you may not confirm one person/);
    await fill('Your username', people.nurse.username);
    await fill('Your password', password);
    await press('Confirm: one person');
    await page.getByRole('heading', { level: 1, name: 'Wilhelmina Arkwright-Poe' }).waitFor();
    await sees(new RegExp(`The notes of number ${second}.*are read in these`));
    await sees(new RegExp(`in notes ${second}`));
    await checked(page, 'merging-one-desktop');
    const view = await notes('kept');
    expect(view.course?.doses.length).toBe(1);
    expect(view.readiness?.requirements.find(({ id }) => id === 'interval')?.today.verdict).toBe('not ready');
  });

  it('the old number finds the kept notes', async () => {
    await page.keyboard.press('Control+k');
    await page.keyboard.type(second);
    await page.getByRole('option', { name: /of other notes/ }).waitFor();
    await page.keyboard.press('Enter');
    await page.waitForURL(`${at.url}/people/kept`);
  });

  it('taken back with a reason, and told apart', async () => {
    page = await at.signedIn('nurse', '/people/kept');
    const { follow, fill, press, pick, tickIn, sees } = hands(page);
    await follow('why, and how to take it back');
    await sees(/letter of her surgery/);
    await checked(page, 'merging-apart');
    await fill('Why they should be read apart', 'her cousin of the same name');
    await press('Read them apart');
    await sees('Possible duplicate: cannot say.');
    await page.getByRole('link', { name: /^compare/ }).click();
    await pick('You have compared them: they are', 'two people');
    await tickIn('What differs', 'number');
    await fill('How you know', 'both were in the room');
    await press('They are two people');
    await page.getByRole('heading', { level: 1, name: 'Wilhelmina Arkwright-Poe' }).waitFor();
    await sees('Easily mistaken for:');
    const { readiness, course } = await notes('kept');
    expect([readiness?.verdict, course?.doses.length]).toEqual(['ready', 0]);
  });
});

describe('a result filed with the wrong person', () => {
  it('is moved to whose it is, and stands there unsigned', async () => {
    const { press, sees, fill } = hands(page);
    await press(/^move creatinine/);
    await page.getByLabel(/belongs to$/).fill(second);
    await page.getByRole('button', { name: /Wilhelmina Arkwright Poe/ }).click();
    await fill('How it came to be here', 'filed by name alone');
    await checked(page, 'merging-move');
    await press('Move it');
    await sees('withdrawn: filed by name alone');
    const there = await notes('second');
    expect(there.unsigned.map(({ text }) => text.split(' ')[0])).toEqual(['creatinine']);
    await expect.poll(async () => (await notes('kept')).readiness?.verdict).toBe('cannot say');
  });
});
