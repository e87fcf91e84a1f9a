/**
 * Three registers as other hospitals keep them, brought in on the screen. The files (packages/exchange/test/registers) were
 * written before the reader existed; what is expected of each row was read off them by eye.
 */
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { setUp } from '../../apps/server/test/support/own-server.ts';
import { hands } from '../support/hands.ts';
import { type Service, checked, service } from '../support/service.ts';

let at: Service;
let page: Page;
const register = (name: string): string =>
  fileURLToPath(new URL(`../../packages/exchange/test/registers/${name}`, import.meta.url));
const american = register('infusion-center-us.csv');
const semicolons = register('day-clinic-semicolon.csv');
const twoRows = register('two-rows-a-patient.csv');

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  page = await at.signedIn('nurse', '/import');
});
afterAll(() => at.close());

async function choose(file: string): Promise<void> {
  await page.getByLabel(/^Choose (the|another) file$/).setInputFiles(file);
  await page.getByRole('heading', { name: 'What the columns mean' }).waitFor();
}
const meaning = (column: string): Promise<string> =>
  page.getByLabel(`Meaning of ${column}`, { exact: true }).inputValue();
const unitOf = (column: string): Promise<string> => page.getByLabel(`Unit of ${column}`, { exact: true }).inputValue();
const troubles = (): Locator => page.getByRole('region', { name: /^Trouble in rows/ }).getByRole('row');
/** Rows of the file with trouble that makes them wait, with the column it stands in. */
const waits = async (): Promise<string[]> =>
  (await troubles().filter({ hasText: 'waits:' }).all()).reduce<Promise<string[]>>(async (before, row) => {
    const cells = await row.getByRole('cell').allTextContents();
    return [...(await before), `${cells[0]} ${cells[1]}`];
  }, Promise.resolve([]));
const count = (says: string): Promise<string> =>
  page.getByRole('listitem').filter({ hasText: says }).getByRole('strong').textContent() as Promise<string>;

async function takeIn(): Promise<void> {
  await hands(page).press('Take it in');
  await page.getByText(/^Taken in: /).waitFor();
}
type Listed = { people: { patient: string; name: string }[]; total: number; unaccounted: number };
const people = (): Promise<Listed> => at.server.read<Listed>('/api/people');
const waitingRows = async (): Promise<number> =>
  (await at.server.read<{ rows: unknown[] }>('/api/import/waiting')).rows.length;

let savedMapping: string;

it('American units, titles above the header: the columns are told from their headings', async () => {
  await checked(page, 'import-empty');
  await choose(american);
  await expect.poll(async () => meaning('DOB')).toBe('birth date');
  expect([await meaning('Scr (mg/dL)'), await unitOf('Scr (mg/dL)')]).toEqual(['creatinine', 'mg/dL']);
  expect([await meaning('Vit D 25-OH (ng/mL)'), await unitOf('Vit D 25-OH (ng/mL)')]).toEqual(['vitamin D', 'ng/mL']);
  expect([await meaning('Wt (lb)'), await unitOf('Wt (lb)')]).toEqual(['weight', 'lb']);
  await expect.poll(async () => page.getByLabel('Dates in figures').inputValue()).toBe('month day year');
});

it('every problem stands by its row and column, with what to do; nothing is written yet', async () => {
  await expect
    .poll(async () => waits())
    .toEqual(['7 Scr (mg/dL)', '8 Corrected Calcium (mg/dL)', '9 DOB', '11 Lab Draw Date', '11 Wt Date']);
  await expect.poll(async () => count('new people')).toBe('3');
  await expect.poll(async () => count('rows would wait')).toBe('4');
  for (const row of await troubles().filter({ hasText: 'waits:' }).all()) {
    const [, , cell, wrong, remedy] = await row.getByRole('cell').allTextContents();
    expect([cell, wrong, remedy]).not.toContain('');
  }
  await checked(page, 'import-dry-run');
  await expect.poll(async () => (await people()).total).toBe(0);
});

it('a mapping is saved as a file, spoiled, and loaded again', async () => {
  const { press, sees } = hands(page);
  const download = page.waitForEvent('download');
  await press('Save the mapping');
  savedMapping = await (await download).path();
  expect(JSON.parse(await readFile(savedMapping, 'utf8'))).toMatchObject({ version: 1, dateOrder: 'month day year' });
  await page.getByLabel('Unit of Scr (mg/dL)', { exact: true }).selectOption('umol/L');
  await expect.poll(async () => page.getByRole('button', { name: 'Check first' }).isDisabled()).toBe(true);
  await press('Check the file with this mapping');
  await expect.poll(() => count('rows would wait')).toBe('6');
  await page.getByLabel('Load a saved mapping').setInputFiles(register('day-clinic-semicolon.csv'));
  await sees('day-clinic-semicolon.csv is not a mapping saved here.');
  await page.getByLabel('Load a saved mapping').setInputFiles({
    name: 'lakeshore.mapping.json',
    mimeType: 'application/json',
    buffer: await readFile(savedMapping),
  });
  await expect.poll(() => count('rows would wait')).toBe('4');
  await expect.poll(async () => unitOf('Scr (mg/dL)')).toBe('mg/dL');
});

it('good rows go in; bad ones wait and are not lost', async () => {
  await takeIn();
  await hands(page).sees(/Taken in: 3 rows, 3 new people/);
  await hands(page).sees('Results brought in count once someone has signed them.');
  await checked(page, 'import-taken-in');
  const { people: listed, unaccounted } = await people();
  expect(listed.map(({ name }) => name).toSorted()).toEqual([
    'Desmond Vanterpool',
    'Leopold Ashgrove',
    'Maribel Okonjo-Reyes',
  ]);
  expect(unaccounted).toBe(0);
  const maribel = listed.find(({ name }) => name.startsWith('Maribel'))?.patient ?? '';
  const { entries } = await at.server.read<{ entries: { kind: string; text: string; on: string }[] }>(
    `/api/people/${maribel}`,
  );
  expect(
    entries
      .filter(({ kind }) => kind === 'dose')
      .map(({ on }) => on)
      .toSorted(),
  ).toEqual(['2024-06-14', '2025-06-20']);
  expect(entries.find(({ text }) => text.startsWith('creatinine'))?.text).toContain('0.8 mg/dL');
  await expect.poll(async () => waitingRows()).toBe(4);
});

it('the same file twice adds nothing', async () => {
  const before = await at.server.atHand.store.tail();
  await choose(american);
  // The proposal of the first time stands until the file has been read again.
  await expect
    .poll(async () => [await count('new people'), await count('new facts'), await count('people known here')])
    .toEqual(['0', '0', '3']);
  await takeIn();
  await hands(page).sees(/Taken in: 0 rows, 0 new people/);
  await expect.poll(async () => (await people()).total).toBe(3);
  await expect.poll(async () => waitingRows()).toBe(4);
  await expect.poll(async () => at.server.atHand.store.tail(), { message: 'not one entry more' }).toEqual(before);
});

it('a waiting row is put right and taken in; as long as it is wrong it keeps waiting', async () => {
  await page.goto(`${at.url}/import/waiting`);
  const row = page.getByRole('region', { name: 'Row 7 of infusion-center-us.csv' });
  const { fill, press } = hands(row);
  await row.waitFor();
  await checked(page, 'import-waiting-rows');
  await press('Try it again');
  await row.getByText('The row still cannot be taken in.').waitFor();
  await checked(page, 'import-still-waits');
  await fill('Scr (mg/dL)', '0.88');
  await press('Try it again');
  await row.waitFor({ state: 'detached' });
  await expect.poll(async () => (await people()).people.map(({ name }) => name)).toContain('Agnes Quillfeather');
  await expect.poll(async () => waitingRows()).toBe(3);
});

it('a row is left out only with a reason, which is kept', async () => {
  const row = page.getByRole('region', { name: 'Row 11 of infusion-center-us.csv' });
  await hands(row).unfold('leave it out');
  await expect.poll(async () => row.getByRole('button', { name: 'Leave the row out' }).isDisabled()).toBe(true);
  await hands(row).fill('Why it is left out', 'moved away before the first dose');
  await hands(row).press('Leave the row out');
  await row.waitFor({ state: 'detached' });
  await expect.poll(async () => waitingRows()).toBe(2);
  const settled = (await at.server.atHand.notes.of('register', 'thornbeck')).all.filter(
    ({ kind }) => kind === 'row-settled',
  );
  expect(settled.map(({ body }) => body)).toContainEqual(
    expect.objectContaining({ row: 11, outcome: 'left out', reason: 'moved away before the first dose' }),
  );
});

it('semicolons and decimal commas: read as they are written there', async () => {
  await page.goto(`${at.url}/import`);
  await choose(semicolons);
  await expect.poll(async () => page.getByLabel('Columns are separated by').inputValue()).toBe(';');
  await expect.poll(async () => page.getByLabel('Decimal sign').inputValue()).toBe(',');
  await expect.poll(async () => page.getByLabel('Dates in figures').inputValue()).toBe('day month year');
  await expect
    .poll(async () => (await waits()).map((each) => each.split(' ')[0]))
    .toEqual(['2', '4', '5', '6', '7', '8']);
  await takeIn();
  const ottilie = (await people()).people.find(({ name }) => name === 'Ottilie Baumgartner-Holt');
  const { entries } = await at.server.read<{ entries: { text: string }[] }>(`/api/people/${ottilie?.patient ?? ''}`);
  expect(entries.map(({ text }) => text).join('\n')).toContain('creatinine 92.5 umol/L');
});

it('two who look alike both wait until someone says they are two people', async () => {
  await page.goto(`${at.url}/import/waiting`);
  const row = page.getByRole('region', { name: 'Row 2 of day-clinic-semicolon.csv' });
  await row.getByText(/looks like Solveig Lindquist/).waitFor();
  await hands(row).pick('This row is about', 'another person than anyone it looks like');
  await hands(row).press('Try it again');
  await row.waitFor({ state: 'detached' });
  await expect.poll(async () => (await people()).people.map(({ name }) => name)).toContain('Solveig Lindqvist');
});

it('two rows a person: told together by number; two birth dates make both rows wait', async () => {
  await page.goto(`${at.url}/import`);
  await choose(twoRows);
  await expect.poll(async () => page.getByLabel('Rows of one person').inputValue()).toBe('several');
  await expect.poll(async () => (await waits()).map((each) => each.split(' ')[0])).toEqual(['4', '5', '8']);
  await takeIn();
  const { people: listed } = await people();
  const rosamund = listed.find(({ name }) => name === 'Rosamund PELLING' || name === 'Rosamund Pelling');
  const { entries } = await at.server.read<{ entries: { kind: string; on: string }[] }>(
    `/api/people/${rosamund?.patient ?? ''}`,
  );
  expect(
    entries
      .filter(({ kind }) => kind === 'dose')
      .map(({ on }) => on)
      .toSorted(),
  ).toEqual(['2024-03-21', '2025-03-27']);
});

it('everyone taken in is on the list of people, each accounted for', async () => {
  await page.goto(`${at.url}/people`);
  const { people: listed, total, unaccounted } = await people();
  expect(unaccounted).toBe(0);
  for (const { name } of listed) await page.getByRole('link', { name }).waitFor();
  expect(total).toBe(listed.length);
  await checked(page, 'import-people');
});
