/**
 * A group direction from its writing to an order under it: the prescriber writes, the pharmacist signs, the nurse whom it names
 * answers its conditions for a person who has no order; another nurse is not even offered it.
 */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { people, referralOf, setUp, workUp } from '../../apps/server/test/support/own-server.ts';
import { fingersFit } from '../support/fingers.ts';
import { type Hands, hands } from '../support/hands.ts';
import { type Service, checked, desktop, service, tablet } from '../support/service.ts';

let at: Service;
let nurse: Page;
let screen: Hands;
const title = 'Yearly zoledronic acid, version 1';

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await at.server.done('clerk', referralOf('wilhelmina'));
  await workUp(at.server, 'wilhelmina');
  const order = (await orderOf())?.id ?? '';
  await at.server.done('prescriber', {
    name: 'withdraw',
    patient: 'wilhelmina',
    entry: order,
    reason: 'written twice',
  });
});
afterAll(() => at.close());

type Written = { readonly id: string; readonly kind: string; readonly body: unknown; readonly withdrawnBy?: unknown };
/** The order that stands. */
const orderOf = async (): Promise<Written | undefined> =>
  (await at.server.read<{ entries: Written[] }>('/api/people/wilhelmina')).entries.find(
    ({ kind, withdrawnBy }) => kind === 'prescription' && withdrawnBy === undefined,
  );

it('a prescriber writes it, with whom it names and what is asked of each person', async () => {
  const prescriber = await at.signedIn('prescriber', '/pharmacy', desktop);
  const { press, fill, choose, tickIn, sees } = hands(prescriber);
  await press('Write a group direction');
  await press('Sign as prescriber');
  await sees(/Not recorded/);
  await fill('Name of the direction', 'Yearly zoledronic acid');
  await fill('Version', '1');
  await choose('Regimen', 'zoledronic acid 5 mg once a year');
  await fill('In force from', '25 Nov 2026');
  await fill('Last day', '24 Nov 2027');
  await tickIn('Who may order and give under it', people.nurse.name);
  await fill(
    'Asked of each person, one a line',
    'Had it before without a severe reaction\nAgrees to an order by a nurse',
  );
  await fill('An order lasts', '28');
  await checked(prescriber, 'direction-form');
  await press('Sign as prescriber');
  await sees(/no pharmacist has signed it/);
});

it('is offered to nobody before a pharmacist has signed it', async () => {
  nurse = await at.signedIn('nurse', '/people/wilhelmina', tablet);
  screen = hands(nurse);
  await screen.sees('Wilhelmina Arkwright-Poe');
  await expect.poll(async () => nurse.getByText('A group direction names you').count()).toBe(0);
  const pharmacist = await at.signedIn('pharmacist', '/pharmacy', desktop);
  await hands(pharmacist).press('I have read it: sign as pharmacist');
  await pharmacist.getByText('In force', { exact: true }).waitFor();
  await checked(pharmacist, 'direction-signed');
});

it('the nurse it names answers every condition; one that is not known is for a prescriber', async () => {
  await nurse.reload();
  await screen.press(`Record the order under ${title}`);
  await checked(nurse, 'direction-order');
  await expect.poll(async () => nurse.getByRole('button', { name: '2 conditions to answer' }).isDisabled()).toBe(true);
  await screen.pick('Had it before without a severe reaction', 'yes');
  await screen.pick('Agrees to an order by a nurse', 'not known');
  await screen.press('Record the order');
  await screen.sees(/Agrees to an order by a nurse: not known/);
  await checked(nurse, 'direction-refused');
  await fingersFit(nurse, 'direction-refused');
  await screen.pick('Agrees to an order by a nurse', 'yes');
  await screen.press('Record the order');
  await nurse.getByText('A group direction names you').waitFor({ state: 'detached' });
  expect((await orderOf())?.body).toMatchObject({
    groupDirection: title,
    validUntil: '2026-12-22',
  });
});

it('a nurse whom it does not name is not offered it', async () => {
  await at.server.done('nurse', {
    name: 'withdraw',
    patient: 'wilhelmina',
    entry: (await orderOf())?.id ?? '',
    reason: 'tried out',
  });
  const other = await at.signedIn('checker', '/people/wilhelmina', tablet);
  await hands(other).sees('Wilhelmina Arkwright-Poe');
  await expect.poll(async () => other.getByText('A group direction names you').count()).toBe(0);
  await nurse.reload();
  await screen.sees('A group direction names you');
});
