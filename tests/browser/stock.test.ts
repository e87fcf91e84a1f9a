/** Packs come in, are counted and are called back: a pharmacist at a desk and a nurse at a tablet, and everybody who had one is told. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { listPacks } from '../../apps/server/test/support/at-the-chair.ts';
import { referralOf, setUp } from '../../apps/server/test/support/own-server.ts';
import { hands } from '../support/hands.ts';
import { type Service, checked, desktop, service, tablet } from '../support/service.ts';

let at: Service;
let pharmacist: Page;
let nurse: Page;

const people = [
  ['olive', 'Olive', 'Tranter', '1939-02-11', '999 204 7810', '2025-10-02', 'ward'],
  ['edda', 'Edda', 'Marrow', '1947-07-19', '999 204 7829', '2026-03-12', 'home'],
] as const;

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await listPacks(at.server);
  for (const [patient, given, family, born, number, on, setting] of people) {
    await at.server.done('clerk', referralOf(patient, { given, family, born, number }));
    await at.server.done('nurse', {
      name: 'record',
      patient,
      line: { kind: 'dose', body: { medicine: 'zoledronic acid 5 mg', setting, batch: 'PA-2391' }, effectiveAt: on },
    });
  }
  pharmacist = await at.signedIn('pharmacist', '/stock', desktop);
  nurse = await at.signedIn('nurse', '/stock', tablet);
});
afterAll(() => at.close());

it('packs come in, and the nurse sees them without asking again', async () => {
  const { press, fill, pick } = hands(pharmacist);
  await press('Packs have come');
  await pick('Pack', 'zoledronic acid 5 mg in 100 mL (09506000134352)');
  await fill('Batch', 'PA-2391');
  await fill('Expiry', '04 2028');
  await fill('How many', '12');
  await checked(pharmacist, 'stock-receive');
  await press('Record');
  const started = performance.now();
  await nurse.getByRole('heading', { name: /Batch PA-2391/ }).waitFor();
  console.log(`seen at the other screen after ${Math.round(performance.now() - started)} ms`);
  await checked(nurse, 'stock-tablet');
});

it('packs past their date are not put on the shelf', async () => {
  const { press, fill, pick, sees } = hands(pharmacist);
  await press('Packs have come');
  await pick('Pack', 'zoledronic acid 5 mg in 100 mL (09506000134352)');
  await fill('Batch', 'PA-1000');
  await fill('Expiry', '10 2026');
  await fill('How many', '3');
  await press('Record');
  await sees('The packs could be used until 31 Oct 2026.');
  await press('Leave');
});

it('a count that is not the sum stands beside it', async () => {
  const { press, fill, sees } = hands(nurse);
  await press('Count batch PA-2391');
  await fill('Packs of PA-2391 on the shelf', '11');
  await press('Counted');
  await sees(/Counted 25 Nov 2026: 11 packs, the sum said 12/);
});

it('a broken pack is taken out', async () => {
  const { press, fill, pick, sees } = hands(nurse);
  await press('Take out packs of batch PA-2391');
  await fill('Packs of PA-2391 taken out', '1');
  await pick('Why', 'broken');
  await press('Taken out');
  await sees(/^10 packs/);
});

it('an order is written down, comes in part, and the coming weeks count what is still to come', async () => {
  const { press, fill, pick, sees } = hands(pharmacist);
  await sees(/may be used today/);
  await press('Packs are ordered');
  await pick('Product', 'zoledronic acid 5 mg in 100 mL');
  await fill('How many', '40');
  await fill('Expected on', '4 12 2026');
  await press('Record');
  await sees('none have come yet');
  await press(/^Packs of it have come/);
  await fill('Batch', 'PA-2391');
  await fill('Expiry', '04 2028');
  await fill('How many', '15');
  await press('Record');
  await sees('15 of 40 have come');
  await sees('25 packs may be used today.');
  const coming = pharmacist.getByRole('table', { name: /the coming 8 weeks/ });
  await expect.poll(async () => coming.getByRole('row', { name: /^30 Nov 2026/ }).innerText()).toMatch(/\t25\t0\t50$/);
  await checked(pharmacist, 'stock-order');
});

it('a batch recall: who had it, and who has been told', async () => {
  const { press, fill, pick, sees, follow } = hands(nurse);
  await press('Stop a batch');
  await fill('Batch', 'PA-2391');
  await pick('Why', 'batch recall');
  await pick('Act within', '48 hours');
  await fill('What is wrong with it', 'particles seen');
  await press('Stop the batch');
  await sees('do not use: batch recall');
  await checked(nurse, 'stock-recalled');
  await follow(/^Who had it: 2 people/);
  await sees('2 people, 0 told, 2 still to tell');
  await checked(nurse, 'trace-tablet');
  await press('They are told Olive Tranter');
  await pick('How they were told', 'telephone');
  await fill('How they are, what was agreed', 'well; bloods on Friday');
  await press('Record');
  await sees('2 people, 1 told, 1 still to tell');
  await sees(/well; bloods on Friday/);
  // The pharmacist's list moves with it.
  await hands(pharmacist).sees('1 of 2 people who had it told since it was stopped, 1 still to tell.');
  await pharmacist.goto(`${at.url}/stock/trace?batch=pa-2391`);
  await hands(pharmacist).sees('2 people, 1 told, 1 still to tell');
  await checked(pharmacist, 'trace-desktop');
});

it('from a person to their batches', async () => {
  await nurse.goto(`${at.url}/people/edda`);
  const { follow, sees } = hands(nurse);
  await follow('batches given');
  await sees('batch recall: particles seen');
  await checked(nurse, 'batches-of-person');
});

it('only a pharmacist lets it be used again', async () => {
  await nurse.goto(`${at.url}/stock`);
  await nurse.getByRole('heading', { name: /Batch PA-2391/ }).waitFor();
  await expect.poll(async () => nurse.getByRole('button', { name: /May be used again/ }).count()).toBe(0);
  await pharmacist.goto(`${at.url}/stock`);
  const { press, fill } = hands(pharmacist);
  await press('May be used again batch PA-2391');
  await fill('What was found', 'the notice was about another maker');
  await press('Batch PA-2391 may be used again');
  await pharmacist.getByRole('heading', { name: /may be used$/ }).waitFor();
});
