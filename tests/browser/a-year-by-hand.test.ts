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

/** The one line that says whether a dose may be given, and why not. */
const verdict = (): Promise<string> => page.getByRole('link', { name: 'why?', exact: true }).locator('..').innerText();
const verdictIs = (words: RegExp | string) => expect.poll(verdict).toMatch(words);
const verdictWithout = (words: string) => expect.poll(verdict).not.toContain(words);
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

const requirement = (title: string) =>
  page.getByRole('row').filter({ has: page.getByRole('rowheader', { name: title }) });
const note = (text: string) =>
  page.getByRole('region', { name: 'Notes' }).getByRole('row').filter({ hasText: text }).first();

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
  await verdictIs(
    /^Cannot say: allergies never asked, .*creatinine never measured, .*teeth and jaw never asked, .*no prescription, secondary causes not looked for, consent never asked/,
  );
  await checked(page, 'year-registered');
});

it('accepted', async () => {
  await form.follow('Decide the referral');
  const decide = hands(panel('Record: referral decided'));
  await decide.pick('Decision', 'accepted');
  await record('referral decided');
  await form.sees(/^In work-up/);
  await expect.poll(async () => texts('triage')).toEqual(['referral accepted']);
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
  await verdictIs(/bloods of 24 Nov 2026 not signed, vitamin D of 24 Nov 2026 not signed/);
  await expect.poll(async () => texts('results-signed')).toEqual([]);
  await checked(page, 'year-unsigned');
  await form.follow('Sign the results');
  await checked(page, 'year-sign');
  await record('results signed');
  await verdictIs(/^Not ready: vitamin D 31 nmol\/L, below 50 nmol\/L; cannot say: .*weight never recorded/);
  await expect.poll(async () => texts('results-signed')).toEqual(['3 results signed']);
  await expect.poll(async () => texts('result')).toContain('creatinine 70 umol/L (sample of 24 Nov 2026)');
});

it('weight', async () => {
  const weight = await open('body weight');
  await weight.measure('Weight', '58.4', 'kg');
  await weight.pick('How it is known', 'measured');
  await weight.fill('Weighed on', '25 11 2026');
  await record('body weight');
  await verdictWithout('weight never recorded');
  await expect.poll(async () => texts('weight')).toEqual(['weight 58.4 kg, measured']);
});

it('vitamin D loading prescribed, and its first dose taken', async () => {
  const prescriber = await at.signedIn('prescriber', `/people/${patient}`);
  const loading = await open('vitamin D loading prescribed', prescriber);
  await loading.fill('Number of doses', '6');
  await loading.fill('Days between doses', '7');
  await loading.fill('In each dose', '50000');
  await loading.fill('First dose on', '25 11 2026');
  await record('vitamin D loading prescribed', prescriber);
  await prescriber.context().close();
  await verdictIs('vitamin D loading not finished');
  await step('6 loading doses of vitamin D').waitFor();
  const taken = await open('vitamin D loading taken');
  await taken.fill('How many doses that day', '1');
  await taken.pick('How you know', 'told us');
  await taken.fill('Taken on', '25 11 2026');
  await record('vitamin D loading taken');
  await step('5 loading doses of vitamin D left, every 7 days, the last on 30 Dec 2026').waitFor();
  await requirement('Vitamin D').getByText('1 of 6 loading doses taken.').waitFor();
  await checked(page, 'year-loading');
});
it('allergies and pregnancy', async () => {
  await (await open('allergy')).pick('Anything known they react to?', 'none known');
  await record('allergy');
  const pregnancy = await open('pregnancy and breast-feeding');
  await pregnancy.pick('Pregnant or breast-feeding?', 'does not apply');
  await pregnancy.fill('Reason', 'told us: thirty years past the menopause');
  await record('pregnancy and breast-feeding');
  await verdictWithout('allergies never asked');
  await verdictWithout('pregnancy never asked');
  await form.sees(/no known allergies/);
});

it('teeth and jaw', async () => {
  const dental = await open('teeth and jaw');
  await dental.pick('Teeth and jaw', 'nothing pending');
  await dental.fill('Last check on', '3 9 2026');
  await record('teeth and jaw');
  await expect.poll(async () => texts('dental')).toEqual(['teeth and jaw: nothing pending, checked 3 Sep 2026']);
  await verdictWithout('teeth and jaw never asked');
  await requirement('Teeth and jaw')
    .getByText(/nothing pending; counts until/)
    .waitFor();
});

it('secondary causes looked for before a first dose', async () => {
  await step('look for secondary causes').waitFor();
  const causes = await open('secondary causes looked for');
  await causes.pick('What came of it', 'none found');
  await causes.fill('Note', 'blood count, thyroid, coeliac screen');
  await record('secondary causes looked for');
  await verdictWithout('secondary causes not looked for');
});

it('ill, then well again', async () => {
  const illness = await open('illness or event');
  await illness.fill('What happened', 'vomiting for two days');
  await illness.pick('What sort', 'illness');
  await illness.fill('Began on', '23 11 2026');
  await record('illness or event');
  await verdictIs(/^Not ready: unwell, .*bloods of 24 Nov 2026 no longer count/);
  await verdictIs(/ask whether it is over/);
  const well = await open('well since');
  await well.fill('Well since', '25 11 2026');
  await record('well since');
  await verdictIs(/^Not ready: vitamin D loading not finished; cannot say: bloods of 24 Nov 2026 no longer count/);
  await step('Take bloods').waitFor();
  await checked(page, 'year-ill');
});

it('consent', async () => {
  const consent = await open('consent');
  await consent.pick('What was decided', 'given');
  await consent.pick('How', 'spoken');
  await record('consent');
  await verdictWithout('consent never asked');
});

it('the prescription, by a prescriber', async () => {
  const prescriber = await at.signedIn('prescriber', `/people/${patient}`);
  const prescription = await open('prescription', prescriber);
  await prescription.choose('Regimen', 'zoledronic acid 5 mg once a year');
  await prescription.fill('Valid from', '25 11 2026');
  await prescription.fill('Valid until, that day included', '24 11 2027');
  await checked(prescriber, 'year-prescription');
  await record('prescription', prescriber);
  await prescriber.context().close();
  await verdictWithout('no prescription');
  await requirement('Prescription').getByText('Valid from 25 Nov 2026 to 24 Nov 2027.').waitFor();
});

it('a call', async () => {
  const call = await open('call or letter');
  await call.pick('By what route', 'telephone');
  await call.pick('About', 'vitamin D');
  await call.pick('Were they reached?', 'yes');
  await call.fill('Note', 'will take the next capsule on Wednesday');
  await record('call or letter');
  await expect
    .poll(async () => texts('call'))
    .toEqual(['telephone about vitamin D, reached: will take the next capsule on Wednesday']);
  await checked(page, 'year-all');
});

it('every next step has its dates, its owner and its reason', async () => {
  const steps = await page.getByRole('region', { name: 'Next steps' }).getByRole('listitem').allInnerTexts();
  expect(steps.length).toBeGreaterThan(0);
  for (const each of steps) {
    expect(each).toMatch(/\d{1,2} \w{3} \d{4}/);
    expect(each).toMatch(/nurse|patient|prescriber|clerk/);
    expect(each).toMatch(/counts from/);
  }
});

it('an entry withdrawn with its reason counts no more and stays readable', async () => {
  const row = note('vomiting for two days');
  await row.getByRole('button', { name: /^withdraw/ }).click();
  await form.press('Withdraw it');
  await form.sees(/^Not recorded/);
  await page.getByLabel(/^Why “illness since 23 Nov 2026/).fill('written in the wrong notes');
  await form.press('Withdraw it');
  await form.sees('withdrawn: written in the wrong notes');
  await verdictWithout('no longer count');
  await expect
    .poll(async () => (await entries()).find(({ kind }) => kind === 'illness'))
    .toMatchObject({
      withdrawnBecause: 'written in the wrong notes',
    });
  await expect.poll(async () => row.locator('s').innerText()).toContain('vomiting for two days');
});

it('why? shows what went in, the sum with its numbers, the limit with its source, and the protocol', async () => {
  const kidney = requirement('Kidney function');
  await kidney.getByRole('button', { name: /^why\?/ }).click();
  const working = page.locator('#working-kidney-function');
  // Cockcroft and Gault, Nephron 1976;16:31, in its umol/L form: (140 - 82) * 58.4 * 1.04 / 70 = 50.32 mL/min.
  await working.getByText('50.32').first().waitFor();
  for (const words of ['70 umol/L', '58.4 kg', '35 mL/min', 'thornbeck-1', 'source:', 'product text'])
    await working.getByText(words).first().waitFor();
  await checked(page, 'year-why');
  await working.getByRole('link', { name: 'entry' }).first().click();
  await page.locator('tr:target').waitFor();
});

it('a corrected entry changes the sum; both stay readable', async () => {
  await note('weight 58.4 kg')
    .getByRole('link', { name: /^correct/ })
    .click();
  const correct = hands(panel('Correct: body weight'));
  await correct.sees('Corrects “weight 58.4 kg, measured”. Both stay readable; the newer one counts.');
  await correct.measure('Weight', '48.5', 'kg');
  await correct.press('Record the correction');
  await panel('Correct: body weight').waitFor({ state: 'detached' });
  // The same form with the corrected weight: 58 * 48.5 * 1.04 / 70 = 41.79 mL/min.
  await requirement('Kidney function').getByText('41.79 mL/min by one form').waitFor();
  await note('weight 48.5 kg, measured').getByText('corrects an earlier entry').waitFor();
  await expect.poll(async () => note('weight 58.4 kg').locator('s').innerText()).toBe('weight 58.4 kg, measured');
  await expect
    .poll(async () => texts('weight'))
    .toEqual(expect.arrayContaining(['weight 48.5 kg, measured', 'weight 58.4 kg, measured']));
  await checked(page, 'year-corrected');
});

it('the whole of the notes is one document to read', async () => {
  const notes = await at.server.ask(`/api/people/${patient}/notes`, { as: 'auditor' });
  expect(notes.statusCode).toBe(200);
  for (const words of ['weight 58.4 kg', 'weight 48.5 kg', 'written in the wrong notes', 'Petra Press'])
    expect(notes.body).toContain(words);
});
