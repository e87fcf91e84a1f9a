/** A tablet at the chair, enrolled: two nurses sign their own steps by PIN and badge, whoever is signed in. */
import type { AddressInfo } from 'node:net';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import {
  listToday,
  otto,
  openToday,
  planToday,
  readyToPrepare,
  wilhelmina,
} from '../../apps/server/test/support/at-the-chair.ts';
import { password, people, setUp } from '../../apps/server/test/support/own-server.ts';
import { cuttableNetwork } from '../support/cuttable-network.ts';
import { fingersFit } from '../support/fingers.ts';
import { type Hands, hands, signIn } from '../support/hands.ts';
import { keptOn } from '../support/kept-on-device.ts';
import { type Service, checked, service, tablet } from '../support/service.ts';
import { checklist, lookedAlong, observations, stepOn } from '../support/visit-by-hand.ts';

const patient = 'wilhelmina';
const badge = 'TB-7f3a-99c1-0042';
let at: Service;
let page: Page;
let hand: Hands;

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await planToday(at.server);
  await listToday(at.server, patient, 1, wilhelmina);
  await listToday(at.server, 'otto', 2, otto);
  await openToday(at.server);
  await readyToPrepare(at.server, patient);
  page = await at.visitor(tablet);
  hand = hands(page);
});
afterAll(() => at.close());

const setMine = async (field: string, secret: string): Promise<void> => {
  await hand.fill(field, secret);
  await hand.fill('Your password', password);
  await hand.press('Set');
};

it('each sets a PIN or a badge with the password', async () => {
  await page.goto(`${at.url}/signature`);
  await signIn(page, people.nurse.username, password);
  await setMine('New PIN', '123456');
  await hand.sees(/guessed first/);
  await setMine('New PIN', '271828');
  await hand.sees('It is set.');
  await checked(page, 'my-signature-tablet');
  await hand.press('leave');
  await signIn(page, people.checker.username, password);
  await setMine('New badge', badge);
  await hand.sees('You have a badge.');
  await hand.press('leave');
});

it('an administrator enrols the screen they stand at', async () => {
  await signIn(page, people.administrator.username, password);
  await page.goto(`${at.url}/settings`);
  await hand.fill('Where it stands', 'tablet at chair 2');
  await hand.press('Enrol this screen');
  await hand.sees(/This screen is enrolled: tablet at chair 2/);
  await checked(page, 'settings-shared-screens-tablet');
  await hand.press('leave');
});

it('a step asks who signs, takes no wrong PIN, and keeps what was entered', async () => {
  await signIn(page, people.nurse.username, password);
  await page.goto(`${at.url}/people/${patient}/visit`);
  await hand.pick('The pack says', 'zoledronic acid 5 mg in 100 mL');
  await hand.fill('Batch', 'PA-2391');
  await hand.fill('Expiry', '04 2028');
  await hand.fill('To run in', '30');
  await hand.tickIn('Identifiers compared with the order', 'full name');
  await hand.tickIn('Identifiers compared with the order', 'number');
  await hand.pick('Clear and colourless?', 'yes');
  await hand.press('Prepared');
  await page.getByRole('region', { name: 'Your signature' }).waitFor();
  await checked(page, 'visit-sign-here-tablet');
  await hand.pick('Who signs', people.nurse.name);
  await hand.fill('PIN, or scan your badge', '999998');
  await hand.press('Sign');
  await hand.sees(/The PIN or the badge is not right/);
  await hand.fill('PIN, or scan your badge', '271828');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Independent second check' }).waitFor();
});

it('the second check is signed alone, by a badge that types like a keyboard', async () => {
  await hand.pick('The pack says', 'zoledronic acid 5 mg in 100 mL');
  await hand.fill('Last four signs of the batch', '2391');
  await hand.fill('Expiry, month and year', '04 2028');
  await hand.pick('It will run by', 'counted drops, no pump');
  await hand.fill('To run in', '30');
  await hand.tickIn('Identifiers you compared yourself', 'full name');
  await hand.tickIn('Identifiers you compared yourself', 'birth date');
  await page.getByLabel('PIN, or scan your badge').focus();
  await page.keyboard.type(badge);
  await checked(page, 'visit-check-by-badge-tablet');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Start the infusion' }).waitFor();
});

it('the start is covered by the signature of its group, and both names stand in the record', async () => {
  await hand.tickIn('Asked and matched at the chair', 'full name');
  await hand.tickIn('Asked and matched at the chair', 'number');
  await hand.tick(lookedAlong);
  await hand.press('It runs now');
  await page.getByText('to the earliest finish').waitFor();
  const { steps } = await at.server.read<{ steps: { step: string; by?: string }[] }>(`/api/people/${patient}/visit`);
  const by = Object.fromEntries(steps.map(({ step, by: who }) => [step, who]));
  expect(by).toMatchObject({
    preparation: people.nurse.name,
    'second check': people.checker.name,
    infusion: people.nurse.name,
  });
});

it('what was written there without a network is signed by whoever wrote it, when it is back', async () => {
  const network = await cuttableNetwork((at.server.app.server.address() as AddressInfo).port);
  const there = await at.visitor(tablet, await page.context().storageState(), { keepsDay: true });
  await there.goto(network.url);
  await keptOn(there, 2);
  await there.goto(`${network.url}/people/otto/visit`);
  const { tick, pick, press, sees, fill } = hands(there.getByRole('main'));
  await sees('Arrived');
  network.cut();
  await tick('full name');
  await tick('birth date');
  await press('They are here');
  const sync = there.getByLabel('Sync');
  await expect.poll(async () => sync.textContent()).toMatch(/1 waiting/);
  network.restore();
  await expect.poll(async () => sync.textContent()).toMatch(/1 needs you/);
  await sync.getByRole('link').click();
  await sees(/This is a shared screen: say who you are/);
  await there.getByRole('checkbox', { name: /^Otto Lindqvist: arrived/ }).check();
  await checked(there, 'waiting-to-sign-tablet', { settles: false });
  await pick('Who signs', people.nurse.name);
  await fill('PIN, or scan your badge', '999998');
  await press('Sign');
  await sees(/The PIN or the badge is not right/);
  await fill('PIN, or scan your badge', badge);
  await press('Sign');
  await expect.poll(async () => sync.textContent()).toMatch(/online$/);
  const { steps } = await at.server.read<{ steps: { step: string; by?: string }[] }>('/api/people/otto/visit');
  expect(steps.find(({ step }) => step === 'arrive')?.by).toBe(people.checker.name);
  await network.close();
  await there.context().close();
});

it('a screen that nobody enrolled asks whoever is signed in for their own password, and says why', async () => {
  const there = await at.signedIn('nurse', '/people/otto/visit', tablet);
  const { fill, press, sees } = hands(there.getByRole('main'));
  await observations.fill(stepOn(there));
  await press('Record');
  await sees('This unit shares its screens, and nobody enrolled this one: say who you are.');
  await checked(there, 'visit-sign-unenrolled-tablet');
  await fingersFit(there, 'visit-sign-unenrolled-tablet');
  expect(await there.getByLabel('Your username').inputValue()).toBe(people.nurse.username);
  await fill('Your password', 'not it');
  await press('Sign');
  await sees(/Not recorded/);
  await fill('Your password', password);
  await press('Sign');
  await sees('Questions of the day');
  // The rest of the group is covered: the answers are recorded without another word.
  await checklist.fill(stepOn(there));
  await press('Record the answers');
  await sees('Go, put off, or ask');
  const { steps } = await at.server.read<{ steps: { step: string; by?: string }[] }>('/api/people/otto/visit');
  const by = Object.fromEntries(steps.map(({ step, by: who }) => [step, who]));
  expect(by).toMatchObject({ observations: people.nurse.name, checklist: people.nurse.name });
});

it('many steps were written there without a network: their writer reads them, ticks them, and signs once', async () => {
  const network = await cuttableNetwork((at.server.app.server.address() as AddressInfo).port);
  const there = await at.visitor(tablet, undefined, { keepsDay: true });
  await there.goto(network.url);
  await signIn(there, people.nurse.username, password);
  await keptOn(there, 2);
  const { press, sees, fill, pick } = hands(there.getByRole('main'));
  const sync = there.getByLabel('Sync');
  await there.goto(`${network.url}/people/otto/visit`);
  await sees('Go, put off, or ask');
  network.cut();
  await press('Go');
  await pick('Site', 'right forearm');
  await pick('Gauge', '22');
  await pick(/^Tries/, '1');
  await pick('Is it in?', 'yes');
  await press('Record');
  await fill('Saline', '10');
  await pick(/^Ran freely/, 'yes');
  await pick(/^Anything with calcium/, 'no');
  await press('Record');
  await expect.poll(async () => sync.textContent()).toMatch(/3 waiting/);
  network.restore();
  await expect.poll(async () => sync.textContent()).toMatch(/1 needs you/);
  await sync.getByRole('link').click();
  await sees('3 entries to sign');
  await press('I read them: all of them are mine');
  await checked(there, 'waiting-to-sign-many-tablet', { settles: false });
  // Nobody else signs for what they wrote, and a wrong password signs nothing.
  await fill('Your username', people.checker.username);
  await fill('Your password', password);
  await press('Sign');
  await sees(/only they sign it/);
  await fill('Your username', people.nurse.username);
  await fill('Your password', 'not it');
  await press('Sign');
  await sees(/The name or the password is not right/);
  await fill('Your password', password);
  await press('Sign');
  await expect.poll(async () => sync.textContent()).toMatch(/online$/);
  const { steps } = await at.server.read<{ steps: { step: string; by?: string }[] }>('/api/people/otto/visit');
  const by = Object.fromEntries(steps.map(({ step, by: who }) => [step, who]));
  expect(by).toMatchObject({ decision: people.nurse.name, cannula: people.nurse.name, flush: people.nurse.name });
  await network.close();
});
