/** Everything a year needs, written by hand on the person's page; after each entry the verdict line says what it changed. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { setUp } from '../../apps/server/test/support/own-server.ts';
import { type Hands, hands } from '../support/hands.ts';
import { type Service, checked, service } from '../support/service.ts';

let at: Service;
let page: Page;
let form: Hands;
let patient: string;

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  page = await at.signedIn('nurse', '/people');
  form = hands(page.getByRole('main'));
});
afterAll(() => at.close());

const verdict = (of = page): Promise<string> =>
  of.getByRole('link', { name: 'why?', exact: true }).locator('..').innerText();
const panel = (title: string, of = page) => of.getByRole('region', { name: title });
/** Opens the form of one kind of entry from the menu, as a person does. */
async function open(label: string, of = page): Promise<Hands> {
  await of.getByRole('link', { name: 'Write in the notes' }).click();
  await panel('Write in the notes', of).getByRole('link', { name: label, exact: true }).click();
  return hands(panel(`Record: ${label}`, of));
}
/** Records what is filled in, and waits until the form is gone. */
async function record(label: string, of = page): Promise<void> {
  await hands(panel(`Record: ${label}`, of)).press('Record');
  await panel(`Record: ${label}`, of).waitFor({ state: 'detached' });
}
type Entry = { kind: string; text: string; withdrawnBecause?: string; amendedBy?: string };
const entries = async (): Promise<Entry[]> =>
  (await at.server.read<{ entries: Entry[] }>(`/api/people/${patient}`)).entries;
const texts = async (kind: string): Promise<string[]> =>
  (await entries()).filter((entry) => entry.kind === kind).map(({ text }) => text);
const step = (what: string | RegExp) =>
  page.getByRole('region', { name: 'Next steps' }).getByRole('listitem').filter({ hasText: what });

it('a new referral', async () => {
  await form.follow('Register someone');
  await page.getByRole('heading', { name: 'Register someone' }).waitFor();
  await form.press('Register');
  await form.sees(/^Not recorded/);
  await checked(page, 'year-referral-refused');
  await form.fill('Given names', 'Cordelia');
  await form.fill('Family name', 'Wexcombe');
  await form.fill('Former name', 'Tarrant');
  await form.fill('Birth date', '3 3 1944');
  await form.pick('Sex as registered', 'female');
  await form.fill('Number', '999 204 7730');
  await form.fill('Telephone', '07700 900244');
  await form.fill('Family doctor', 'Dr A. Penrose, Thornbeck Surgery');
  await form.fill('What they need on the day', 'hearing aids');
  await form.fill('From', 'fracture liaison service');
  await form.fill('Reason', 'spine fracture, hip T -2.9');
  await form.pick('How soon', 'high');
  await form.press('Register');
  await page.getByRole('heading', { level: 1, name: 'Cordelia Wexcombe' }).waitFor();
  patient = page.url().split('/').at(-1) ?? '';
  await form.sees(/born 3 March 1944 \(82\)/);
  await form.sees(/^Referral received/);
  console.log(await verdict());
  await checked(page, 'year-registered');
});

it('accepted', async () => {
  await form.follow('Decide the referral');
  const decide = hands(panel('Record: referral decided'));
  await decide.pick('Decision', 'accepted');
  await record('referral decided');
  await form.sees(/^In work-up/);
  console.log(await verdict());
});

it('the results of one sample; they count once they are signed', async () => {
  const sample = await open('results of one sample');
  await sample.fill('Date of the sample', '24 11 2026');
  await sample.measure('Creatinine', '70', 'µmol/L');
  await sample.measure('Vitamin D', '31', 'nmol/L');
  await sample.measure('Adjusted calcium', '2.35', 'mmol/L');
  await sample.fill("Laboratory's lower limit for the calcium", '2.20');
  await sample.fill("Laboratory's upper limit for the calcium", '2.60');
  await checked(page, 'year-sample');
  await sample.press('Record 3 values');
  await panel('Record: results of one sample').waitFor({ state: 'detached' });
  console.log(await verdict());
  await checked(page, 'year-unsigned');
  await form.follow('Sign the results');
  const sign = hands(panel('Record: results signed'));
  await checked(page, 'year-sign');
  await record('results signed');
  console.log(await verdict());
});

it('weight', async () => {
  const weight = await open('body weight');
  await weight.measure('Weight', '58.4', 'kg');
  await weight.pick('How it is known', 'measured');
  await weight.fill('Weighed on', '25 11 2026');
  await record('body weight');
  console.log(await verdict());
});

it('vitamin D loading prescribed, and its first dose taken', async () => {
  const prescriber = await at.signedIn('prescriber', `/people/${patient}`);
  const loading = await open('vitamin D loading', prescriber);
  await loading.fill('Number of doses', '6');
  await loading.fill('Days between doses', '7');
  await loading.fill('In each dose', '50000');
  await loading.fill('First dose on', '25 11 2026');
  await record('vitamin D loading', prescriber);
  await prescriber.context().close();
  console.log(await verdict());
  const taken = await open('vitamin D taken');
  await taken.fill('How many doses that day', '1');
  await taken.pick('How you know', 'told us');
  await taken.fill('Taken on', '25 11 2026');
  await record('vitamin D taken');
  console.log(await verdict());
  await checked(page, 'year-loading');
});
it('rest', async () => {
  for (const what of [
    'allergy',
    'pregnancy and breast-feeding',
    'teeth and jaw',
    'illness',
    'well since',
    'consent',
    'prescription',
    'call',
  ]) {
    await open(what).catch(console.log);
  }
});
