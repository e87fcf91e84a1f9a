/** A batch is recalled while it runs: pharmacist at a desk, nurse at the chair, nurse in charge at Today. Hazards 37, 38. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { listPacks } from '../../apps/server/test/support/at-the-chair.ts';
import { hands } from '../support/hands.ts';
import { patient, runningDrip } from '../support/running-drip.ts';
import { type Service, checked, desktop, tablet } from '../support/service.ts';

let at: Service;
let chair: Page;
let pharmacist: Page;
let today: Page;

beforeAll(async () => {
  ({ at, page: chair } = await runningDrip(5));
  await listPacks(at.server);
  pharmacist = await at.signedIn('pharmacist', '/stock', desktop);
  today = await at.signedIn('checker', '/', tablet);
});
afterAll(() => at.close());

it('an expiry typed wrongly at receiving is withdrawn and received as it is', async () => {
  const { press, fill, pick, sees } = hands(pharmacist);
  const receive = async (expiry: string): Promise<void> => {
    await press('Packs have come');
    await pick('Pack', 'zoledronic acid 5 mg in 100 mL (09506000134352)');
    await fill('Batch', 'PA-2391');
    await fill('Expiry', expiry);
    await fill('How many', '12');
    await press('Record');
  };
  await receive('04 2027');
  await sees(/may be used until 30 Apr 2027/);
  await receive('04 2028');
  await sees(/Packs of batch PA-2391 may be used until 30 Apr 2027/);
  await press('Leave');
  await press('Received wrongly batch PA-2391');
  await checked(pharmacist, 'stock-wrong-receipt');
  await fill('What is wrong with it', 'expiry misread: the pack says 2028');
  await press('Withdraw this receipt');
  await expect.poll(() => pharmacist.getByRole('heading', { name: /Batch PA-2391/ }).count()).toBe(0);
  await receive('04 2028');
  await sees(/may be used until 30 Apr 2028/);
});

it('the batch that runs is recalled: the chair and Today say so at once, with what to do', async () => {
  const { press, fill, pick, sees } = hands(pharmacist);
  await press('Stop a batch');
  await fill('Batch', 'pa2391');
  await sees(/No packs of this batch are written down here/);
  await fill('Batch', 'pa-2391');
  await sees(/11 packs by the sum, 1 person had it/);
  await pick('Why', 'batch recall');
  await pick('Act within', 'at once');
  await fill('What is wrong with it', 'particles seen');
  await press('Stop the batch');
  await hands(chair).sees('What runs now is of a stopped batch.');
  await hands(chair).sees(/Ask a prescriber and the pharmacist now/);
  await checked(chair, 'visit-stopped-batch');
  await hands(today).sees('What runs now is of a stopped batch.');
  await checked(today, 'today-stopped-batch');
  await sees('1 pack of it prepared or running now');
  await checked(pharmacist, 'stock-stopped-in-use');
});

it('paused, it does not run again; the volume is written and the rest is a prescriber’s', async () => {
  const { press, sees } = hands(chair);
  await at.server.done('nurse', { name: 'pause infusion', patient, reason: 'batch recalled' });
  await sees('What stands still here is of a stopped batch.');
  const again = chair.getByRole('button', { name: 'Its batch is stopped: it does not run again' });
  await again.waitFor();
  expect(await again.isDisabled()).toBe(true);
  await press('Stop early');
  await checked(chair, 'visit-stopped-not-resumed');
});

it('the trace says who still has to be told', async () => {
  await pharmacist.goto(`${at.url}/stock/trace?batch=PA-2391`);
  await hands(pharmacist).sees('1 person, 0 told, 1 still to tell');
  await checked(pharmacist, 'trace-in-use');
});
