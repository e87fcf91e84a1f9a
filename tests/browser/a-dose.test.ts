/**
 * The day of a dose, from arrival to the letter, at a shared tablet: four people's acts, one dose, recorded once.
 * Running time under 15 minutes is refused (zoledronic acid 5 mg product text 4.2: not less than 15 minutes).
 */
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { password, people, referralOf, setUp, workUp } from '../../apps/server/test/support/own-server.ts';
import { fingersFit } from '../support/fingers.ts';
import { type Service, checked, service, tablet } from '../support/service.ts';
import { lookedAlong } from '../support/visit-by-hand.ts';

let at: Service;
let page: Page;
let step: Locator;

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await at.server.done('clerk', referralOf('wilhelmina'));
  await workUp(at.server, 'wilhelmina');
  await at.server.done('nurse', {
    name: 'plan session',
    session: 'thornbeck-2026-11-25',
    body: {
      unit: 'thornbeck',
      on: '2026-11-25',
      zone: 'Europe/London',
      arriveAt: ['09:00', '09:20'],
      opensAt: '08:30',
      closesAt: '17:00',
    },
  });
  await at.server.done('clerk', { name: 'book', patient: 'wilhelmina', session: 'thornbeck-2026-11-25', place: 1 });
  page = await at.signedIn('nurse', '/people/wilhelmina/visit', tablet);
  step = page.getByRole('main').getByRole('region').first();
});
afterAll(() => at.close());

const titled = (title: string): Promise<void> => step.getByRole('heading', { name: title }).waitFor();
const tick = (name: string): Promise<void> => step.getByRole('checkbox', { name, exact: true }).check({ force: true });
const pick = (group: string | RegExp, name: string): Promise<void> =>
  step.getByRole('group', { name: group }).getByRole('radio', { name, exact: true }).check({ force: true });
const fill = (label: string, value: string): Promise<void> => step.getByLabel(label, { exact: true }).fill(value);
const act = (name: string): Promise<void> => step.getByRole('button', { name, exact: true }).click();

it('she is identified by two identifiers before anything else', async () => {
  await titled('Arrived');
  await checked(page, 'visit-arrive');
  await fingersFit(page, 'visit-arrive');
  await tick('full name');
  await expect.poll(async () => step.getByRole('button', { name: 'Two identifiers first' }).isDisabled()).toBe(true);
  await tick('birth date');
  await step.getByRole('button').last().click();
});

it('observations and weight of the day', async () => {
  await titled('Observations');
  await checked(page, 'visit-observations');
  await fingersFit(page, 'visit-observations');
  for (const [label, value] of [
    ['Systolic pressure', '130'],
    ['Diastolic pressure', '76'],
    ['Pulse', '72'],
    ['Temperature', '36.8'],
    ['Oxygen saturation', '97'],
    ['Breaths', '16'],
  ] as const)
    await fill(label, value);
  await pick('A new irregular pulse?', 'no');
  // NEWS2 (Royal College of Physicians 2017): no total while a parameter is missing.
  await page.getByText('no total: air or oxygen and consciousness missing').waitFor();
  await pick('Air or oxygen', 'air');
  await pick('Consciousness', 'alert');
  await page.getByText('0, low risk (saturation on scale 1)').waitFor();
  await page.getByLabel('Weight today: value').fill('64.0');
  await pick('Weight today', 'kg');
  expect(await page.evaluate(() => window.scrollY), 'the button is far down').toBeGreaterThan(0);
  await act('Record');
  await titled('Questions of the day');
  // The next step begins under the name of the person, however far down the button was.
  await expect.poll(() => page.evaluate(() => window.scrollY)).toBe(0);
});

it('every question of the day is asked; nothing is preset', async () => {
  await titled('Questions of the day');
  await expect.poll(async () => step.getByRole('radio', { checked: true }).count()).toBe(0);
  await checked(page, 'visit-checklist');
  await fingersFit(page, 'visit-checklist');
  const questions = step.getByRole('group');
  for (let index = 0; index < (await questions.count()); index += 1) {
    const question = questions.nth(index);
    const goodAnswer = /Drunk plenty|Still wants/.test((await question.textContent()) ?? '') ? 'Yes' : 'No';
    await question.getByRole('radio', { name: goodAnswer }).check({ force: true });
  }
  await act('Record the answers');
});

it('go, cannula, flush', async () => {
  await titled('Go, put off, or ask');
  await checked(page, 'visit-decision');
  await fingersFit(page, 'visit-decision');
  await act('Go');
  await titled('Cannula');
  await fingersFit(page, 'visit-cannula');
  await pick('Site', 'right forearm');
  await pick('Gauge', '22');
  await pick(/^Tries/, '1');
  await pick('Is it in?', 'yes');
  await act('Record');
  await titled('Saline flush');
  await fingersFit(page, 'visit-flush');
  await fill('Saline', '10');
  await pick(/^Ran freely/, 'yes');
  await pick(/^Anything with calcium/, 'no');
  await act('Record');
});

it('the preparer reads the pack', async () => {
  await titled('Preparation');
  await checked(page, 'visit-preparation');
  await fingersFit(page, 'visit-preparation');
  await pick('The pack says', 'zoledronic acid 5 mg in 100 mL');
  await fill('Batch', 'PA-2391');
  await fill('Expiry', '30 04 2028');
  await fill('To run in', '30');
  await tick('full name');
  await tick('number');
  await pick('Clear and colourless?', 'yes');
  await act('Prepared');
});

async function secondCheck(as: { username: string }, lastFour: string): Promise<void> {
  await pick('The pack says', 'zoledronic acid 5 mg in 100 mL');
  await fill('Last four signs of the batch', lastFour);
  await fill('Expiry, month and year', '04 2028');
  await pick('It will run by', 'a pump');
  await fill('The pump shows', '200');
  await step.getByRole('checkbox', { name: 'full name', exact: true }).check({ force: true });
  await step.getByRole('checkbox', { name: 'birth date', exact: true }).check({ force: true });
  await fill('Your username', as.username);
  await fill('Your password', password);
  await act('Sign my reading');
}

it('the second check shows nothing of the first, and the preparer may not sign it', async () => {
  await titled('Independent second check');
  await checked(page, 'visit-second-check');
  await fingersFit(page, 'visit-second-check');
  await expect.poll(async () => page.content()).not.toContain('PA-2391');
  await secondCheck(people.nurse, '2391');
  await step
    .getByText(/prepared it|another person|someone else/i)
    .first()
    .waitFor();
});

it('another nurse signs her own reading at the same tablet', async () => {
  await secondCheck(people.checker, '2391');
  await titled('Infusion');
});

it('the infusion cannot be called finished before fifteen minutes of running time', async () => {
  await titled('Start the infusion');
  // EU product text of zoledronic acid 5 mg, 4.2: "via a vented infusion line", "at a constant infusion rate" (from memory).
  const looked = page.getByRole('checkbox', { name: lookedAlong, exact: true });
  expect(await looked.isChecked()).toBe(false);
  await checked(page, 'visit-before-start');
  await fingersFit(page, 'visit-before-start');
  await expect.poll(async () => step.getByRole('button', { name: 'Two identifiers first' }).isDisabled()).toBe(true);
  await tick('full name');
  await tick('birth date');
  await fill('To run in', '30');
  await expect
    .poll(async () => step.getByRole('button', { name: 'Look along the line first' }).isDisabled())
    .toBe(true);
  await looked.check();
  await act('It runs now');
  await page.getByText('to the earliest finish').waitFor();
  await checked(page, 'visit-running');
  await fingersFit(page, 'visit-running');
  at.clock.moveOn(14);
  await page.reload();
  await page.getByText('to the earliest finish').waitFor();
  await expect.poll(async () => step.getByRole('button', { name: 'Finish (not yet)' }).isDisabled()).toBe(true);
  const early = await at.server.act('nurse', { name: 'finish infusion', patient: 'wilhelmina', milliliters: 100 });
  expect(early.statusCode).toBe(422);
  expect(early.json<{ refusals: { name: string }[] }>().refusals[0]?.name).toBe('too-early-to-finish');
});

it('after its time it is finished, the cannula removed, she is watched and goes home', async () => {
  at.clock.moveOn(17);
  await page.reload();
  await act('The bag is empty: 100 mL given');
  await titled('Remove the cannula');
  await fingersFit(page, 'visit-removal');
  await pick('The site', 'looks well');
  await act('It is out');
  await titled('Watch afterwards');
  await checked(page, 'visit-observe');
  await fingersFit(page, 'visit-observe');
  await fill('Watched for', '30');
  await pick('Well?', 'yes');
  at.clock.moveOn(30);
  await act('Record');
  await titled('See them off');
  for (const told of [
    /^Given from batch PA-2391\.$/,
    /^The next dose is due on .* 2027\.$/,
    /^We ring them from .* 2027; bloods from .* to .* 2027\. If nobody has rung by/,
  ])
    await page.getByText(told).waitFor();
  await fingersFit(page, 'visit-leave');
  await pick(/^Do they hold the card/, 'yes');
  await pick(/how do they go/, 'fit to go');
  await act('They have left');
  await page.getByRole('heading', { name: 'The visit is over' }).waitFor();
  await checked(page, 'visit-over');
  await fingersFit(page, 'visit-over');
});

it('the letter to the family doctor is signed as it stands, and the next dose has its date', async () => {
  await page.getByRole('link', { name: /^Letter to the family doctor/ }).click();
  await checked(page, 'letter');
  const letter = page.frameLocator('iframe');
  for (const wanted of ['PA-2391', '1 of 3 planned', 'Thursday 25 November 2027'])
    await letter.getByText(wanted).first().waitFor();
  await page.getByRole('button', { name: 'Sign the letter' }).click();
  await page.getByRole('link', { name: 'The letter to the family doctor is signed: read it' }).waitFor();
  // The letter alone runs no script, not even a checker's: its text is looked at on a page of its own.
  const alone = await at.visitor(tablet);
  await alone.setContent((await at.server.ask('/api/people/wilhelmina/letter', { as: 'nurse' })).body);
  await checked(alone, 'letter-alone');
  await page.goto(`${at.url}/people/wilhelmina`);
  await page
    .getByText(/25 Nov 2027/)
    .first()
    .waitFor();
  await checked(page, 'person-after-dose');
});

it('every act of the visit is in the notes, with who did it', async () => {
  const { entries, standing } = await at.server.read<{
    entries: { kind: string; by: { name: string } }[];
    standing: { standing: string };
  }>('/api/people/wilhelmina');
  const kinds = entries.map(({ kind }) => kind);
  for (const kind of [
    'arrived',
    'observations',
    'checklist',
    'go-decision',
    'cannula',
    'flush',
    'preparation',
    'second-check',
    'infusion-started',
    'infusion-finished',
    'dose',
    'cannula-removed',
    'observed',
    'left',
    'letter',
  ])
    expect(kinds).toContain(kind);
  expect(entries.find(({ kind }) => kind === 'second-check')?.by.name).toBe(people.checker.name);
  expect(entries.filter(({ kind }) => kind === 'dose')).toHaveLength(1);
  expect(standing.standing).toBe('between doses');
});
