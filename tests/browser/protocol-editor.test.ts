/**
 * A hospital changes its own protocol: a number is drafted, the people it would flip are shown while it is typed, its source
 * is asked for, the version is written, two people sign it. By mouse and by keyboard, at the desk and on the tablet.
 */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { referralOf, setUp, workUp } from '../../apps/server/test/support/own-server.ts';
import { hands } from '../support/hands.ts';
import { type Service, checked, service, tablet } from '../support/service.ts';

let at: Service;
let page: Page;
const FLOOR = 'Creatinine clearance below which the dose is not given';

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await at.server.done('clerk', referralOf('p1'));
  await workUp(at.server, 'p1');
  page = await at.signedIn('pharmacist', '/protocol');
});
afterAll(() => at.close());

it('a version begins from the one in force: every number with its unit and its source, grouped by what it decides', async () => {
  const { press, sees } = hands(page);
  await sees(/^In force from/);
  await press('Begin a version');
  await page.getByRole('radio', { name: /^thornbeck-1/ }).check();
  await page.getByRole('group', { name: 'Kidneys and weight' }).waitFor();
  await expect.poll(async () => page.getByLabel(FLOOR, { exact: true }).inputValue()).toBe('35');
  await sees('Compared with the version in force, thornbeck-1: nothing.');
  await sees('1 person compared; nobody’s verdict or window would change.');
  // Folded but for the first: each part by name, with how much of it is changed; by keyboard too.
  const partsList = page.getByRole('navigation', { name: 'Parts of the sheet' });
  await partsList.getByRole('button', { name: 'Calcium' }).focus();
  await page.keyboard.press('Enter');
  await expect.poll(async () => page.evaluate(() => document.activeElement?.tagName)).toBe('SUMMARY');
  // 2.20 mmol/L x 4.008 = 8.82 mg/dL (clinical.md 2f).
  await sees(/8\.82 mg\/dL/);
  await checked(page, 'protocol-editor-begun');
});

it('while a number is typed, who flips and what is decided otherwise follow it', async () => {
  const { sees } = hands(page);
  await page.getByLabel(FLOOR, { exact: true }).fill('70');
  await sees('1 person would flip');
  const flips = page.getByRole('region', { name: 'Who flips' });
  await flips.getByRole('link', { name: 'Wilhelmina Arkwright-Poe' }).waitFor();
  await expect.poll(async () => flips.getByRole('row').nth(1).textContent()).toMatch(/not ready: kidney/i);
  const changes = page.getByRole('region', { name: 'What is decided otherwise' });
  await expect
    .poll(async () => changes.getByRole('row').nth(1).textContent())
    .toMatch(/35 mL\/min.*70 mL\/min.*not said yet/);
  await page.getByLabel(FLOOR, { exact: true }).fill('35');
  await sees('1 person compared; nobody’s verdict or window would change.');
  await page.getByLabel(FLOOR, { exact: true }).fill('about 70');
  await sees('Figures, with at most four decimals.');
  await page.getByLabel(FLOOR, { exact: true }).fill('70');
  const kidneys = page.getByRole('navigation', { name: 'Parts of the sheet' }).getByRole('listitem').first();
  await expect.poll(async () => kidneys.innerText()).toMatch(/Kidneys and weight.* 1 changed.*1 without a source/s);
  await checked(page, 'protocol-editor-flips');
});

it('a change without its source is refused, and the field says so', async () => {
  const { fill, press, sees } = hands(page);
  await fill('Name of the new version', 'thornbeck-2');
  await fill('Title', 'Thornbeck, a higher limit');
  await sees('One change does not say where it comes from.');
  await press('close all');
  await press('Write this version');
  // What is refused opens its part.
  await sees('say where this comes from');
  const field = page.getByLabel('Where 70 mL/min comes from', { exact: true });
  await expect.poll(async () => field.getAttribute('aria-invalid')).toBe('true');
  await checked(page, 'protocol-editor-refused');
});

it('by keyboard: the source is typed, a policy, a regimen, a question and the order are changed, each with its source', async () => {
  const field = page.getByLabel('Where 70 mL/min comes from', { exact: true });
  await field.focus();
  await page.keyboard.type('our nephrologists, minutes of 20 Nov 2026');
  await hands(page).press('open all');
  const policy = page.getByRole('radio', { name: 'load without a level' });
  await policy.focus();
  await page.keyboard.press('Space');
  await page.keyboard.press('Tab');
  await page.keyboard.type('our pharmacy');
  expect(
    await page
      .getByRole('group', { name: 'Policies' })
      .getByLabel('Where this comes from', { exact: true })
      .inputValue(),
  ).toBe('our pharmacy');

  const regimen = page.getByRole('group', { name: 'zoledronic acid 5 mg once a year', exact: true });
  await regimen.getByLabel('Before a review', { exact: true }).fill('4');
  await regimen.getByLabel('Where this comes from', { exact: true }).fill('our course committee');

  const switches = page.getByRole('group', { name: 'From one medicine to another', exact: true });
  const pamidronate = switches.getByRole('group', { name: 'after pamidronate', exact: true });
  await pamidronate.getByLabel(/^At the latest/).fill('6');
  await pamidronate.getByLabel('Where this comes from', { exact: true }).fill('our bone clinic');
  const ibandronate = page.getByRole('group', { name: 'ibandronate 3 mg every three months', exact: true });
  await ibandronate.locator('summary').click();
  await ibandronate.getByLabel(`${FLOOR}, for ibandronate 3 mg`, { exact: true }).fill('35');
  await ibandronate.getByLabel('Where this comes from', { exact: true }).fill('our nephrologists, the same');

  const order = page.getByRole('group', { name: 'Order of gravity' });
  await order
    .getByRole('button', { name: /^earlier/ })
    .first()
    .focus();
  await page.keyboard.press('Enter');
  await order.getByLabel('Where this comes from', { exact: true }).fill('said first at our unit');

  const { fill, press } = hands(page);
  await fill('Another question', 'Slept badly?');
  await press('Put it in');
  const questions = page.getByRole('group', { name: 'Questions of the day' });
  await questions.getByLabel('Where this comes from', { exact: true }).fill('asked for by the nurses');
  const carryOn = page.getByRole('group', { name: /^What speaks for carrying on/ });
  await carryOn.getByRole('button', { name: /^strike out ?: a fracture on treatment/ }).click();
  await carryOn.getByLabel('Where this comes from', { exact: true }).fill('opens a review at once with us');
  await fill('Another, asked of the prescriber', 'Falls often');
  await press('Let it speak for carrying on');
  await carryOn
    .getByRole('group', { name: 'Falls often' })
    .getByLabel('Where this comes from', { exact: true })
    .fill('our falls clinic');
  await page.getByText(/changes? (?:does|do) not say where/i).waitFor({ state: 'detached' });
  await checked(page, 'protocol-editor-sourced');
});

it('a version is written whole, with what it changes and whom it flips above the place for signatures', async () => {
  const { press, sees } = hands(page);
  await press('Write this version');
  await page.getByRole('heading', { name: 'Sign this version' }).waitFor();
  const changes = page.getByRole('region', { name: 'What is decided otherwise' });
  await changes.waitFor();
  await expect.poll(async () => changes.getByRole('row').count()).toBe(13);
  await sees(/decided by Phil Farm: our nephrologists/);
  await page.getByRole('link', { name: 'Wilhelmina Arkwright-Poe' }).waitFor();
  await press('Count');
  await sees('1 person looked at');
  await sees('doses given that would have been put off');
  await checked(page, 'protocol-editor-written');
});

it('two people sign; it comes into force, and the person’s verdict names it', async () => {
  const { fill, pick, press, sees } = hands(page);
  await pick('You sign as', 'pharmacist');
  await fill('In force from', '25 11 2026');
  await press('Sign');
  await sees(/^signed as pharmacist by/);
  const prescriber = await at.signedIn('prescriber', '/protocol', tablet);
  await hands(prescriber).press(/^thornbeck-2/);
  await prescriber.getByRole('link', { name: 'Wilhelmina Arkwright-Poe' }).waitFor();
  await checked(prescriber, 'protocol-editor-written-tablet');
  await hands(prescriber).pick('You sign as', 'clinician');
  await hands(prescriber).press('Sign');
  await hands(prescriber).sees(/^In force from Wed 25 Nov 2026/);
  await hands(prescriber).press('Decide them again');
  await hands(prescriber).sees(/each comes out as it was signed/);
  await checked(prescriber, 'protocol-editor-in-force-tablet');
  const { readiness } = await at.server.read<{ readiness?: { protocolVersion: string; verdict: string } }>(
    '/api/people/p1',
  );
  expect(readiness).toMatchObject({ protocolVersion: 'thornbeck-2', verdict: 'not ready' });
});

it('on the tablet the editor stands in one column', async () => {
  const small = await at.signedIn('nurse', '/protocol', tablet);
  await hands(small).press('Begin a version');
  await small.getByRole('radio', { name: /^starter: US-like/ }).check();
  await small.getByRole('group', { name: 'Kidneys and weight' }).waitFor();
  await small.getByText('Decide the empty numbers first').waitFor();
  await checked(small, 'protocol-editor-tablet');
});
