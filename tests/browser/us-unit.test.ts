/**
 * A unit that writes American English under the US-like starter, from referral to the sheet taken home: every value stands as it
 * was read, with its unit, and converted beside it; nothing without a unit is taken.
 */
import type { PersonView } from '@twelvemonth/exchange';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { americanUnit, workedUp } from '../../apps/server/test/support/american-unit.ts';
import { type Hands, hands } from '../support/hands.ts';
import { type Service, checked, service, tablet } from '../support/service.ts';
import {
  type HandStep,
  arrive,
  checklist,
  finish,
  goHome,
  observations,
  removal,
  secondCheckBy,
  start,
  stepOn,
  untilPrepared,
} from '../support/visit-by-hand.ts';

let at: Service;
let page: Page;
let form: Hands;
let patient: string;

beforeAll(async () => {
  at = await service({ at: '2026-11-25T14:10' });
  await americanUnit(at.server);
  page = await at.signedIn('nurse', '/people');
  form = hands(page.getByRole('main'));
});
afterAll(() => at.close());

const panel = (title: string, of = page) => of.getByRole('region', { name: title });
async function open(label: string, of = page): Promise<Hands> {
  await of.getByRole('link', { name: 'Write in the notes' }).click();
  await panel('Write in the notes', of).getByRole('link', { name: label, exact: true }).click();
  return hands(panel(`Record: ${label}`, of));
}
async function record(label: string, of = page): Promise<void> {
  await hands(panel(`Record: ${label}`, of)).press('Record');
  await panel(`Record: ${label}`, of).waitFor({ state: 'detached' });
}

/** Waits, as every look after a press does. */
const main = (of: Page = page) => hands(of.getByRole('main'));
const texts = async (kind: string): Promise<string[]> =>
  (await at.server.read<PersonView>(`/api/people/${patient}`)).entries
    .filter((entry) => entry.kind === kind)
    .map(({ text }) => text);

it('a referral: what is wanted is said in the words used there', async () => {
  await form.follow('Register someone');
  await form.fill('Given names', 'Cordelia');
  await form.fill('Family name', 'Wexcombe');
  await form.fill('Birth date', '3 4 1944');
  await page.getByText('born on Saturday 4 March 1944').waitFor();
  await form.pick('Sex as registered', 'female');
  await form.fill('Number', '999 204 7730');
  await form.fill('Telephone', '555 0100');
  await form.fill('From', 'fracture liaison service');
  await form.fill('Reason', 'spine fracture, hip T -2.9');
  await form.pick('How soon', 'routine');
  await form.press('Register');
  await page.getByRole('heading', { level: 1, name: 'Cordelia Wexcombe' }).waitFor();
  patient = page.url().split('/').at(-1) ?? '';
  await form.follow('Decide the referral');
  await hands(panel('Record: referral decided')).pick('Decision', 'accepted');
  await record('referral decided');
  await main().sees(/^Draw labs \(creatinine, calcium and vitamin D\) and weigh/);
  await page.getByRole('link', { name: 'Enter the labs' }).first().waitFor();
  await expect.poll(async () => page.getByText(/\bbloods\b/).count()).toBe(0);
  await checked(page, 'us-referral');
});

it('results and weight in the units there: a value without its unit is asked about, and each stands as typed', async () => {
  const sample = await open('results of one sample');
  await sample.fill('Date of the sample', '24 11 2026');
  await page.getByLabel('Creatinine: value', { exact: true }).focus();
  await sample.sees(/^“24 11 2026” is not a date that exists\. Write month, day, year/);
  await sample.fill('Date of the sample', '11 24 2026');
  await expect
    .poll(async () =>
      page
        .getByRole('group', { name: 'Creatinine' })
        .getByRole('radio')
        .first()
        .evaluate((unit) => unit.parentElement?.textContent),
    )
    .toBe('mg/dL');
  await page.getByLabel('Creatinine: value', { exact: true }).fill('0.9');
  await sample.press('Record one value');
  await sample.sees(/the unit is missing, and is never guessed: umol\/L, mg\/dL/);
  await checked(page, 'us-sample-no-unit');
  await expect.poll(async () => texts('result')).toEqual([]);
  await sample.measure('Creatinine', '0.9', 'mg/dL');
  await sample.measure('Vitamin D', '34', 'ng/mL');
  await sample.measure('Adjusted calcium', '9.4', 'mg/dL');
  await sample.press('Record 3 values');
  await panel('Record: results of one sample').waitFor({ state: 'detached' });
  await form.follow('Sign the results');
  await record('results signed');
  const weight = await open('body weight');
  await weight.measure('Weight', '141.5', 'lb');
  await weight.pick('How it is known', 'measured');
  await weight.fill('Weighed on', '11/25/2026');
  await record('body weight');
  await expect
    .poll(async () => [...(await texts('result')), ...(await texts('weight'))].toSorted())
    .toEqual([
      'adjusted calcium 9.4 mg/dL (2.35 mmol/L) (sample of 24 Nov 2026)',
      'creatinine 0.9 mg/dL (79.6 umol/L) (sample of 24 Nov 2026)',
      'vitamin D 34 ng/mL (84.9 nmol/L) (sample of 24 Nov 2026)',
      'weight 141.5 lb (64.2 kg), measured',
    ]);
});

it('readiness compares in the unit reported, by the limits of that unit', async () => {
  // Cockcroft and Gault 1976: (140 - 82) x 64.183 kg x 0.85 / (72 x 0.9 mg/dL) = 48.83 mL/min; 48.66 by 1.04 and umol/L.
  await main().sees(/^48\.66 mL\/min by one form, 48\.83 by the other; limit 35/);
  await main().sees(/^Adjusted calcium 9\.40 mg\/dL; limits 8\.8 - 10\.4 mg\/dL/);
  await main().sees(/^vitamin D 34 ng\/mL; floor 30 ng\/mL, compared in the unit reported/);
  for (const id of ['kidney-function', 'calcium', 'vitamin-d']) {
    await page.locator(`button[aria-controls="working-${id}"]`).click();
    await page.locator(`#working-${id}`).waitFor();
  }
  await checked(page, 'us-readiness');
});

it('body, kidneys and bone: pounds as weighed and the kilograms in which a dose is reckoned', async () => {
  // 141.5 lb x 0.45359237 = 64.18 kg; 0.9 mg/dL x 88.4 = 79.6 umol/L
  await page.getByText('141.5 lb (64.2 kg)', { exact: true }).waitFor();
  await page.getByText('0.9 mg/dL (79.6 umol/L)', { exact: true }).waitFor();
});

const britishWords = /\b(bloods|paracetamol|diarrhoea|oedema|colourless|enrol|ring (?:them|us|the))\b/i;
const screens: readonly (readonly [name: string, path: string])[] = [
  ['today', '/'],
  ['people', '/people'],
  ['sessions', '/sessions'],
  ['fill', '/suggest-places'],
  ['look-ahead', '/look-ahead'],
  ['recall', '/recall'],
  ['cohorts', '/recall/cohorts'],
  ['letters', '/letters'],
  ['aftercare', '/aftercare'],
  ['stock', '/stock'],
  ['pharmacy', '/pharmacy'],
  ['settings', '/settings'],
  ['anaphylaxis', '/anaphylaxis'],
];
it.each(screens)('no word of ours on %s is one that nobody says there', async (_, path) => {
  const screen = await at.signedIn('nurse', path);
  await screen.waitForLoadState('networkidle');
  const text = await screen.locator('body').innerText();
  expect(text.split('\n').filter((line) => britishWords.test(line))).toEqual([]);
  await screen.context().close();
});
it('the anaphylaxis card names the medicine as it is called there, and as its source calls it', async () => {
  const card = await at.signedIn('nurse', '/anaphylaxis');
  await card.getByText('Epinephrine (adrenaline) 500 micrograms').waitFor();
  await card.context().close();
});

let chair: Page;
const does = async ({ title, fill, press }: HandStep): Promise<void> => {
  const step = stepOn(chair);
  await step.getByRole('heading', { name: title }).waitFor();
  await fill(step);
  await step.getByRole('button', { name: press, exact: true }).click();
};

it('the thermometer reads Fahrenheit: Celsius typed there is asked about; what is recorded stands in both', async () => {
  await workedUp(at.server, patient);
  await at.server.done('nurse', {
    name: 'plan session',
    session: 's1',
    body: {
      unit: 'thornbeck',
      on: '2026-11-25',
      zone: 'America/New_York',
      arriveAt: ['09:20', '09:40'],
      opensAt: '08:30',
      closesAt: '17:00',
    },
  });
  await at.server.done('clerk', { name: 'book', patient, session: 's1', place: 1 });
  chair = await at.signedIn('nurse', `/people/${patient}/visit`, tablet);
  const step = stepOn(chair);
  await does(arrive(1));
  await step.getByRole('heading', { name: 'Observations' }).waitFor();
  await step.getByText('°F', { exact: true }).waitFor();
  await does({
    ...observations,
    fill: async () => {
      await observations.fill(step);
      await hands(step).fill('Temperature', '37');
      await hands(step).measure('Weight today', '141', 'lb');
    },
  });
  await hands(step).sees(/in degrees Fahrenheit a temperature is between 86 and 109\.4/);
  await expect.poll(async () => texts('observations')).toEqual([]);
  await checked(chair, 'us-temperature-refused');
  await hands(step).fill('Temperature', '100.2');
  await step.getByText('°F = 37.9 °C', { exact: true }).waitFor();
  await hands(step).press('Record');
  await step.getByRole('heading', { name: 'Questions of the day' }).waitFor();
  await expect
    .poll(async () => texts('observations'))
    .toEqual([expect.stringContaining('temperature 100.2 degrees F (37.9 degrees C)')]);
  await expect.poll(async () => texts('weight')).toContain('weight 141 lb (64.0 kg), measured');
});

it('the dose, and the letter about it with American words and dates', async () => {
  await does(checklist);
  for (const each of untilPrepared) await does(each);
  await does(secondCheckBy('chris.check'));
  await does(start);
  await stepOn(chair).getByRole('heading', { name: 'Running' }).waitFor();
  at.clock.moveOn(31);
  await chair.reload();
  await does(finish);
  await does(removal);
  for (const each of goHome) await does(each);
  await chair.getByRole('heading', { name: 'See them off' }).waitFor({ state: 'detached' });
  await chair.goto(`${at.url}/people/${patient}/letter`);
  const letter = chair.frameLocator('iframe');
  for (const words of ['Sincerely', 'Blood tests for it', 'Wednesday, November 25, 2026'])
    await letter.getByText(words).first().waitFor();
  await expect.poll(async () => letter.locator('body').innerText()).not.toMatch(/\bbloods\b/i);
  await checked(chair, 'us-letter');
});

it('the sheets they take home are in American without being asked, and so are the questions after the dose', async () => {
  await chair.goto(`${at.url}/people/${patient}/pack`);
  const paper = chair.frameLocator('iframe');
  await paper.getByText('Ask your nurse how much acetaminophen').first().waitFor();
  await paper.getByText(/above 102 F/).waitFor();
  await main(chair).sees(/^No amount of acetaminophen is printed:/);
  await expect
    .poll(async () => paper.locator('body').innerText())
    .not.toMatch(/paracetamol|\b[Rr]ing\b|at 999|Celsius/);
  await checked(chair, 'us-pack');
  await chair.goto(`${at.url}/people/${patient}/aftercare`);
  await main(chair).sees('How do you take acetaminophen?');
  await main(chair).sees('A seizure, or a faint?');
  await chair.getByText('°F', { exact: true }).waitFor();
  await checked(chair, 'us-aftercare');
});
