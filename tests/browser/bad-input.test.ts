/** Bad input at the screen: what was typed stays there, what is missing is asked for, what may be a slip is asked about. */
import type { PersonView } from '@twelvemonth/exchange';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { referralOf, setUp, workUp } from '../../apps/server/test/support/own-server.ts';
import { hands } from '../support/hands.ts';
import { type Service, checked, desktop, service, tablet } from '../support/service.ts';

let at: Service;
let page: Page;

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await at.server.done('clerk', referralOf('wilhelmina'));
  await workUp(at.server, 'wilhelmina');
  page = await at.signedIn('nurse', '/people/wilhelmina?record=sample');
});
afterAll(() => at.close());

const written = async (text: string): Promise<boolean> =>
  (await at.server.read<PersonView>('/api/people/wilhelmina')).entries.some((entry) => entry.text.startsWith(text));

const kidney = async (): Promise<readonly unknown[]> => {
  const { readiness } = await at.server.read<PersonView>('/api/people/wilhelmina');
  const found = readiness?.requirements.find(({ id }) => id === 'kidney-function');
  return [found?.today.verdict, found?.today.cause];
};

describe('a sample typed by hand', () => {
  it('a date without a year is asked for, with what was typed', async () => {
    await page.getByLabel('Date of the sample').fill('24 11');
    await page.getByLabel('Creatinine: value').fill('0.9');
    await hands(page).sees('“24 11” has no year. Write day, month, year: 28 1 2027.');
    await checked(page, 'bad-input-year');
    await expect.poll(async () => page.getByLabel('Date of the sample').inputValue()).toBe('24 11');
  });

  it('a value without a unit is refused by name, and stays as it was typed', async () => {
    const { press, sees } = hands(page);
    await page.getByLabel('Date of the sample').fill('24 11 2026');
    await press('Record one value');
    await sees(/the unit is missing, and is never guessed/);
    await expect.poll(async () => page.getByLabel('Creatinine: value').inputValue()).toBe('0.9');
    await expect.poll(async () => written('creatinine 0.9')).toBe(false);
  });

  it('a value that must be in another unit is asked about, and so is one that contradicts another of that day', async () => {
    const { measure, press, sees } = hands(page);
    await measure('Creatinine', '0.9', 'µmol/L');
    await press('Record one value');
    await sees(/You typed creatinine 0.9 umol\/L, far outside what is seen in umol\/L: is it 0.9 mg\/dL\?/);
    await checked(page, 'bad-input-unit');
    await measure('Creatinine', '98', 'µmol/L');
    await press('Record one value');
    await sees(/the notes have 70 umol\/L of the same day, 24 Nov 2026: which is right/);
    await expect.poll(async () => written('creatinine 98')).toBe(false);
    await page.setViewportSize(tablet);
    await checked(page, 'bad-input-two-values-tablet');
    await page.setViewportSize(desktop);
  });

  it('is recorded as typed once somebody says that they looked', async () => {
    await hands(page).press('record it as typed: I looked');
    await expect.poll(() => written('creatinine 98')).toBe(true);
    const { unsigned } = await at.server.read<PersonView>('/api/people/wilhelmina');
    const body = { results: unsigned.map(({ entry }) => entry) };
    await at.server.done('nurse', {
      name: 'record',
      patient: 'wilhelmina',
      line: { kind: 'results-signed', body, effectiveAt: '2026-11-25' },
    });
  });

  it('two that differ decide nothing until one of them is withdrawn', async () => {
    const { entries } = await at.server.read<PersonView>('/api/people/wilhelmina');
    await expect.poll(async () => kidney()).toEqual(['cannot say', 'two creatinines of 24 Nov 2026 differ']);
    const wrong = entries.find(({ text }) => text.startsWith('creatinine 70'));
    await at.server.done('nurse', {
      name: 'withdraw',
      patient: 'wilhelmina',
      entry: wrong?.id ?? '',
      reason: 'haemolysed, had again',
    });
    await expect.poll(async () => (await kidney())[1]).not.toBe('two creatinines of 24 Nov 2026 differ');
  });
});

describe('a weight typed by hand', () => {
  it('that does not fit the one before is asked about, by keyboard, and weighed again before a dose', async () => {
    await page.goto(`${at.url}/people/wilhelmina?record=weight`);
    const { measure, pick, press, sees } = hands(page);
    await press('today');
    await measure('Weight', '141', 'kg');
    await pick('How it is known', 'measured');
    await page.getByRole('button', { name: 'Record', exact: true }).focus();
    await page.keyboard.press('Enter');
    await sees(/on 24 Nov 2026 it was 64.2 kg, 120 % more: is the unit right, and was it weighed twice\?/);
    await checked(page, 'bad-input-weight');
    await page.getByRole('button', { name: 'record it as typed: I looked' }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => written('weight 141 kg')).toBe(true);
    await expect.poll(async () => kidney()).toEqual(['cannot say', 'weight changed by more than 15 %']);
    await page.goto(`${at.url}/people/wilhelmina`);
    await sees(/Weigh again/);
    await checked(page, 'bad-input-weigh-again');
  });
});
