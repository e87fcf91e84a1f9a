/** A drip that ends before its time: too much in too few minutes is told as an incident, and who got nothing is put off, not lost. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Hands, hands } from '../support/hands.ts';
import { patient, runningDrip } from '../support/running-drip.ts';
import { type Service, checked } from '../support/service.ts';

let at: Service;
let page: Page;
let nurse: Hands;

beforeAll(async () => {
  ({ at, page } = await runningDrip(1));
  nurse = hands(page.getByRole('main'));
});
afterAll(() => at.close());

type Notes = { standing: { standing: string; owner: string }; entries: { kind: string }[] };
const notes = (): Promise<Notes> => at.server.read<Notes>(`/api/people/${patient}`);
const kinds = async (): Promise<string[]> => (await notes()).entries.map(({ kind }) => kind);

it('more than the bag holds is refused in the words of the form', async () => {
  await nurse.press('Stop early');
  await nurse.fill('Given', '140');
  await nurse.fill('Why it was stopped', 'felt unwell');
  await nurse.press('Stopped for good');
  await nurse.sees('given: at most 100');
});

it('95 mL in a minute is asked about on its field, and nothing is written', async () => {
  await nurse.fill('Given', '95');
  await nurse.fill('Why it was stopped', 'felt unwell');
  await nurse.press('Stopped for good');
  await nurse.sees(/By the clock 95 mL ran in 1 min/);
  await page.getByLabel('Incident: what happened, and whom you told').waitFor();
  await checked(page, 'ended-early-incident');
  expect(await kinds()).not.toContain('infusion-finished');
});

it('nothing ran in: they do not leave before the dose is put off, with what comes next and whose it is', async () => {
  await nurse.fill('Given', '0');
  await nurse.press('Stopped for good');
  await page.getByRole('heading', { name: 'Remove the cannula' }).waitFor();
  expect(await kinds()).not.toContain('dose');
  await nurse.unfold('put the dose off after all');
  await nurse.choose('Reason', 'no cannula');
  await nurse.pick('Could it have been seen before?', 'only today');
  await nurse.fill('What next', 'ring her; another place');
  await nurse.fill('By when', '2 Dec 2026');
  await nurse.pick('Whose it is', 'nurse');
  await nurse.fill('Who tells the patient', 'Nora told her at the chair');
  await checked(page, 'ended-early-put-off');
  await nurse.press('Put off');
  await nurse.sees(/^Recorded for .*: put off/);
  await nurse.pick('The site', 'looks well');
  await nurse.press('It is out');
  await page.getByRole('heading', { name: 'See them off' }).waitFor();
  await nurse.pick('Do they hold the card that says whom to call?', 'yes');
  await nurse.pick(/^Steady, drinking/, 'fit to go');
  await nurse.press('They have left');
  await expect.poll(async () => (await notes()).standing).toMatchObject({ standing: 'put off', owner: 'nurse' });
});
