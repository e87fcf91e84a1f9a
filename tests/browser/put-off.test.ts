/** She came, and is not treated: an answer that holds the dose, the refusal to go, the reason, and where she is afterwards. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { referralOf, setUp, workUp } from '../../apps/server/test/support/own-server.ts';
import { type Hands, hands } from '../support/hands.ts';
import { type Service, checked, service, tablet } from '../support/service.ts';

let at: Service;
let page: Page;
let her: Hands;

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
  const now = '2026-11-25T08:40:00.000+00:00';
  const record = (kind: string, body: unknown) =>
    at.server.done('nurse', { name: 'record', patient: 'wilhelmina', line: { kind, body, effectiveAt: now } });
  await record('arrived', { session: 'thornbeck-2026-11-25', identifiers: ['full name', 'birth date'] });
  await record('observations', {
    pulsePerMinute: 72,
    systolicMmHg: 130,
    diastolicMmHg: 76,
    temperatureCelsius: 36.8,
    saturationPercent: 97,
    when: 'before',
  });
  await record('weight', { quantity: { comparator: '', value: '64.0', unit: 'kg' }, method: 'measured' });
  page = await at.signedIn('nurse', '/people/wilhelmina/visit', tablet);
  her = hands(page.getByRole('main'));
});
afterAll(() => at.close());

it('an answer that holds the dose opens in place and is recorded as she said it', async () => {
  await her.sees('Questions of the day');
  const questions = page.getByRole('group').filter({ has: page.getByRole('radio', { name: 'No', exact: true }) });
  for (let index = 0; index < (await questions.count()); index += 1) {
    const question = questions.nth(index);
    const words = (await question.textContent()) ?? '';
    const answer = /Drunk plenty|Still wants|thigh, hip or groin/.test(words) ? 'Yes' : 'No';
    await question.getByRole('radio', { name: answer }).check();
  }
  await checked(page, 'put-off-checklist');
  await her.press('Record the answers');
});

it('go is refused and the reason is named; it stands on top of the list', async () => {
  await her.sees('Go, put off, or ask');
  await her.sees(/thigh, hip or groin pain/i);
  await checked(page, 'put-off-decision');
  await her.press('Go');
  await page
    .getByRole('alert')
    .or(page.getByText(/may not|not ready/i))
    .first()
    .waitFor();
  const kinds = await at.server.read<{ entries: { kind: string }[] }>('/api/people/wilhelmina');
  expect(kinds.entries.filter(({ kind }) => kind === 'go-decision')).toHaveLength(0);
});

it('she is put off with the reason, what next, and who tells her', async () => {
  await her.press('Put off');
  await her.choose('Reason', 'thigh, hip or groin pain');
  await her.fill('What was found', 'new pain in the right thigh for three weeks');
  await her.fill('What next, and by when', 'X-ray of both whole femurs this week');
  await her.fill('Who tells the patient what', 'Nora Nurse, today');
  await page.locator('form').getByRole('button', { name: 'Put off', exact: true }).click();
  await her.sees('See them off');
  await checked(page, 'put-off-leave');
  await her.pick(/^Do they hold the card/, 'yes');
  await her.press('They have left');
  await her.sees('The visit is over');
});

it('where she is afterwards: put off, with the reason, an owner and a date', async () => {
  await page.goto(`${at.url}/people/wilhelmina`);
  await her.sees(/put off/i);
  const { standing, entries } = await at.server.read<{
    standing: { standing: string; on?: string; owner: string };
    entries: { kind: string; text: string }[];
  }>('/api/people/wilhelmina');
  expect(standing.standing).toBe('put off');
  expect(standing.on).toBeDefined();
  expect(standing.owner).not.toBe('');
  expect(entries.find(({ kind }) => kind === 'go-decision')?.text).toMatch(/put off/);
  expect(entries.some(({ kind }) => kind === 'dose')).toBe(false);
  await checked(page, 'put-off-person');
});

it('the letter to the family doctor says that it was not given, why, and what happens next', async () => {
  await page.goto(`${at.url}/people/wilhelmina/letter`);
  const letter = page.frameLocator('iframe');
  await letter.getByText('It was not given.').waitFor();
  await letter.getByText(/X-ray of both whole femurs/).waitFor();
});
