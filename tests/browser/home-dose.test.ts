/** A drip given at home is written on the person's page: by whoever gave it, with who checked it and when. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { people, referralOf, setUp, workUp } from '../../apps/server/test/support/own-server.ts';
import { hands } from '../support/hands.ts';
import { type Service, checked, service, tablet } from '../support/service.ts';

let at: Service;
let page: Page;

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  const edda = { given: 'Edda', family: 'Marrow', born: '1947-07-19', number: '999 204 7829' };
  await at.server.done('clerk', referralOf('edda', edda));
  await workUp(at.server, 'edda');
  page = await at.signedIn('nurse', '/people/edda?record=dose', tablet);
});
afterAll(() => at.close());

it('alone, where the protocol allows it to nobody, it is refused in a sentence and nothing typed is lost', async () => {
  const { pick, fill, press, sees } = hands(page.getByRole('main'));
  await pick('Medicine', 'zoledronic acid 5 mg');
  await pick('Where it was given', 'home');
  await fill('Batch', 'PA-2391');
  await fill('Given on', '25 11 2026');
  await press('Record');
  await sees(/nobody is named who made the second check/);
  await checked(page, 'home-dose-tablet');
  await pick('At home: who made the second check', people.checker.name);
  await pick('At home: when they checked', 'when it was prepared, before they left');
  await press('Record');
  await sees(/lets nobody give a dose at home alone/);
  await sees(/a telephone call is no check/);
});

it('two who went: it stands in the notes with both names', async () => {
  const { pick, press, sees } = hands(page.getByRole('main'));
  await pick('At home: when they checked', 'there, before it ran');
  await press('Record');
  await sees(new RegExp(`the second check was made by ${people.checker.name}`));
  const { entries } = await at.server.read<{ entries: { kind: string; by: { name: string }; text: string }[] }>(
    '/api/people/edda',
  );
  const [dose] = entries.filter(({ kind }) => kind === 'dose');
  expect([dose?.by.name, dose?.text]).toEqual([people.nurse.name, expect.stringContaining('batch PA-2391')]);
});
