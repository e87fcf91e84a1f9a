/**
 * A unit whose protocol wants a pharmacist before anything is prepared: the pharmacist asks, the prescriber answers and later
 * corrects, and the nurse at the chair is held until the prescription that stands is verified.
 */
import type { VisitView } from '@twelvemonth/exchange';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import {
  lineNow,
  listToday,
  planToday,
  readyToPrepare,
  startInfusion,
  wilhelmina,
  packRead,
} from '../../apps/server/test/support/at-the-chair.ts';
import { setUp } from '../../apps/server/test/support/own-server.ts';
import { hands } from '../support/hands.ts';
import { type Service, checked, desktop, service, tablet } from '../support/service.ts';

let at: Service;
let pharmacist: Page;
let prescriber: Page;
let nurse: Page;

beforeAll(async () => {
  at = await service();
  await setUp(at.server, '2026-11-25', { pharmacyVerification: 'before preparation' });
  await planToday(at.server);
  await listToday(at.server, 'wilhelmina', 1, wilhelmina);
  await readyToPrepare(at.server, 'wilhelmina');
  [pharmacist, prescriber, nurse] = await Promise.all([
    at.signedIn('pharmacist', '/pharmacy', desktop),
    at.signedIn('prescriber', '/', desktop),
    at.signedIn('nurse', '/people/wilhelmina/visit', tablet),
  ]);
});
afterAll(() => at.close());

it('an unverified prescription holds the preparation, and stands on Today and on the person’s page', async () => {
  await hands(nurse).sees('not verified by a pharmacist');
  await checked(nurse, 'pharmacy-visit-held');
  await hands(prescriber).sees('Prescriptions refused or not verified, with a place');
  await checked(prescriber, 'pharmacy-today');
  await hands(pharmacist).sees("wants a pharmacist's word before anything is prepared");
  await checked(pharmacist, 'pharmacy-queue');
});

it('the pharmacist asks; the question is the prescriber’s work until it is answered', async () => {
  const { press, fill, sees } = hands(pharmacist);
  await press('Ask the prescriber Wilhelmina Arkwright-Poe');
  await press('Ask');
  await sees(/Not recorded/);
  await fill('What you ask the prescriber', 'Ciclosporin since October: is that known?');
  await press('Ask');
  await pharmacist.getByRole('heading', { name: /For the prescriber/ }).waitFor();
  const prescribers = hands(prescriber);
  await prescribers.follow(/questions of the pharmacist to a prescriber/);
  await prescribers.sees('Ciclosporin since October: is that known?');
  await prescribers.press('Answer about Wilhelmina Arkwright-Poe');
  await prescribers.fill('What you answer', 'Known; clearance 60 mL/min on 24 November');
  await checked(prescriber, 'pharmacy-answer');
  await prescribers.press('Answer');
  await sees(/the pharmacist looks again/);
});

it('verified, the nurse is held no longer and needs not ask again', async () => {
  const { press } = hands(pharmacist);
  await press('Verify Wilhelmina Arkwright-Poe');
  await checked(pharmacist, 'pharmacy-verify');
  await press('I have read it: verified');
  await nurse.getByText('Nothing is prepared yet.').waitFor({ state: 'detached' });
});

it('the order is read beside what it is judged by', async () => {
  await pharmacist.getByText(/prescription verified, with the place/).click();
  const { sees } = hands(pharmacist);
  await sees(/mL\/min/);
  await sees('other medicines');
  await sees('last dose');
  await checked(pharmacist, 'pharmacy-beside');
});

it('corrected by the prescriber, it is unverified again everywhere', async () => {
  const prescribers = hands(prescriber);
  await prescriber.getByText(/prescription verified, with the place/).click();
  await prescribers.follow('Correct the prescription of Wilhelmina Arkwright-Poe');
  await prescribers.fill('Conditions', 'over 45 minutes');
  await prescribers.press('Record the correction');
  await hands(nurse).sees(/changed since it was verified on 25 Nov 2026/);
  await prescribers.sees(/changed since it was verified/);
  await checked(prescriber, 'pharmacy-person');
  await hands(pharmacist).sees(/changed since it was verified/);
  await expect.poll(async () => pharmacist.getByRole('button', { name: /^Verify/ }).count()).toBe(1);
});

it('refused while it runs, the chair is told', async () => {
  const { press, fill } = hands(pharmacist);
  await press('Verify Wilhelmina Arkwright-Poe');
  await press('I have read it: verified');
  await nurse.getByText('Nothing is prepared yet.').waitFor({ state: 'detached' });
  const step = (kind: string, body: unknown) => at.server.done('nurse', lineNow(at.server, 'wilhelmina', kind, body));
  await step('preparation', packRead);
  const { preparation } = await at.server.read<VisitView>('/api/people/wilhelmina/visit');
  await at.server.done('checker', {
    name: 'second check',
    patient: 'wilhelmina',
    preparation: preparation?.entry,
    reading: {
      product: 'zoledronic acid 5 mg in 100 mL',
      batchLastFour: '2391',
      expiryMonth: '2028-04',
      minutes: 30,
      identifiers: ['full name', 'birth date'],
    },
  });
  await at.server.done('nurse', startInfusion('wilhelmina'));
  const folded = pharmacist.getByText(/prescription verified, with the place/);
  await folded.waitFor();
  if (!(await pharmacist.getByRole('button', { name: /^Refuse/ }).isVisible())) await folded.click();
  await press('Refuse Wilhelmina Arkwright-Poe');
  await fill('Why it is refused', 'ciclosporin: kidneys first');
  await press('Refuse this prescription');
  await hands(nurse).sees('The pharmacist has spoken while it runs.');
  await checked(nurse, 'pharmacy-refused-while-running');
});
