/**
 * The act arrives, its answer does not: cut between the two, in the middle of the answer, or answered by a proxy whose server is
 * away. Each is in the notes once, what is pressed next is another act, and nobody is told to settle what only the network did.
 */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  infusionRuns,
  lineNow,
  listToday,
  otto,
  odette,
  planToday,
  readyToDecide,
  wilhelmina,
} from '../../apps/server/test/support/at-the-chair.ts';
import { setUp } from '../../apps/server/test/support/own-server.ts';
import { type Cuttable, overACuttableNetwork } from '../support/over-a-cuttable-network.ts';
import { putDayAhead } from '../support/device-clock.ts';
import { hands } from '../support/hands.ts';
import { keptOn } from '../support/kept-on-device.ts';
import { type Service, service } from '../support/service.ts';
import { checklist, lookedAlong, observations, stepOn } from '../support/visit-by-hand.ts';

let at: Service;
let network: Cuttable;
let page: Page;

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await planToday(at.server);
  await listToday(at.server, 'wilhelmina', 1, wilhelmina);
  await listToday(at.server, 'otto', 2, otto);
  await listToday(at.server, 'odette', 3, odette);
  await infusionRuns(at.server, 'wilhelmina');
  await readyToDecide(at.server, 'odette', 3);
  await at.server.done(
    'nurse',
    lineNow(at.server, 'otto', 'arrived', {
      session: 'thornbeck-2026-11-25',
      identifiers: ['full name', 'birth date'],
      chair: 2,
    }),
  );
  ({ network, page } = await overACuttableNetwork(at));
}, 60_000);
afterAll(async () => {
  await network.close();
  await at.close();
});

const written = async (patient: string, kind: string): Promise<number> =>
  (await at.server.read<{ entries: { kind: string; at: string }[] }>(`/api/people/${patient}`)).entries.filter(
    (entry) => entry.kind === kind && entry.at.startsWith('2026-11-25T'),
  ).length;
const sync = async (): Promise<string> => (await page.getByLabel('Sync').textContent()) ?? '';
const visitOf = async (patient: string): Promise<void> => {
  await page.goto(`${network.url}/people/${patient}/visit`);
  await page.getByLabel('Sync').waitFor();
};
/** What is done now arrives; the network goes as soon as it has. */
const cutOnceWritten = async (patient: string, kind: string, press: () => Promise<void>): Promise<void> => {
  const before = await written(patient, kind);
  network.loseAnswers();
  await press();
  await expect.poll(async () => written(patient, kind)).toBe(before + 1);
  network.cut();
};

it('the day is kept', async () => {
  await keptOn(page, 3);
});

describe('a drip that runs', () => {
  it('a pause whose answer was lost: it runs again, an act of its own', async () => {
    await visitOf('wilhelmina');
    const { press, fill, sees, tick } = hands(page.getByRole('main'));
    await press('Pause');
    await fill('Why it is paused', 'the pump alarms');
    await cutOnceWritten('wilhelmina', 'infusion-paused', () => press('It stands still now'));
    await sees(/Pause it at the line and write from when on the day sheet/);
    network.restore();
    // Why it stands still is read where it is let run again: the first press is enough.
    await sees(/the pump alarms/);
    await tick(lookedAlong);
    await press('It runs again');
    await page.getByRole('button', { name: 'Pause', exact: true }).waitFor();
    expect(await written('wilhelmina', 'infusion-resumed')).toBe(1);
    expect(await written('wilhelmina', 'infusion-paused')).toBe(1);
  });
});

describe('at a step', () => {
  it('the answer breaks off in the middle: it waits, and is in the notes once', async () => {
    await visitOf('otto');
    await hands(page).sees('Observations');
    await observations.fill(stepOn(page));
    network.cutActs();
    await hands(page).press('Record');
    await hands(page).sees('Questions of the day');
    network.restore();
    await expect.poll(sync).toMatch(/online$/);
    expect(await written('otto', 'observations')).toBe(1);
  });

  it('a proxy answers for a server that is away: it waits, nothing needs a person, and live updates come back', async () => {
    network.answerAsGateway();
    await checklist.fill(stepOn(page));
    await hands(page).press('Record the answers');
    await hands(page).sees(/Kept on this device/);
    await expect.poll(sync).toMatch(/offline since .* · 1 waiting/);
    network.restore();
    await expect.poll(sync).toMatch(/online$/);
    expect(await written('otto', 'checklist')).toBe(1);
    await page.getByRole('heading', { name: 'Go, put off, or ask' }).waitFor();
    const { seq } = await at.server.read<{ seq: number }>('/api/people/otto/visit');
    await at.server.done(
      'checker',
      { name: 'decide', patient: 'otto', decision: 'go' },
      { seen: { 'patient/otto': seq } },
    );
    await page.getByRole('heading', { name: 'Cannula' }).waitFor();
  });

  it('a decision whose answer was lost is no news of somebody else: what was written after it goes with it', async () => {
    await visitOf('odette');
    await hands(page).sees('Go, put off, or ask');
    await cutOnceWritten('odette', 'go-decision', () => hands(page).press('Go'));
    await hands(page).sees(/Kept on this device/);
    const { pick, press } = hands(page);
    await pick('Site', 'right forearm');
    await pick('Gauge', '22');
    await pick(/^Tries/, '1');
    await pick('Is it in?', 'no');
    await press('Record');
    await expect.poll(sync).toMatch(/offline since .* · 2 waiting/);
    // No cannula was placed: the next try is here, and its form is empty.
    await hands(page).sees('Is it in?');
    await expect.poll(async () => page.getByRole('radio', { name: '22', exact: true }).isChecked()).toBe(false);
    network.restore();
    await expect.poll(sync).toMatch(/online$/);
    expect(await written('odette', 'go-decision')).toBe(1);
    expect(await written('odette', 'cannula')).toBe(1);
  });

  it('the notes can be read and not written for a while: it waits, and is sent when they can', async () => {
    let tries = 0;
    await page.route('**/api/acts', async (route) => {
      tries += 1;
      if (tries > 2) return route.continue();
      const says = 'The disk is full.';
      return route.fulfill({
        status: 503,
        contentType: 'application/problem+json',
        body: JSON.stringify({ type: '/problems/read-only', title: says, status: 503, detail: says }),
      });
    });
    const { pick, press, sees } = hands(page);
    await pick('Site', 'left forearm');
    await pick('Gauge', '24');
    await pick(/^Tries/, '1');
    await pick('Is it in?', 'yes');
    await press('Record');
    await sees(/Kept on this device/);
    await expect.poll(async () => written('odette', 'cannula')).toBe(2);
    await expect.poll(sync).toMatch(/online$/);
    await page.unroute('**/api/acts');
  });

  it('a device that keeps nothing more says so, and what was typed stays', async () => {
    await page.evaluate(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('full', 'QuotaExceededError');
      };
    });
    network.cut();
    const { fill, pick, press, sees } = hands(page);
    await sees('Saline flush');
    await fill('Saline', '10');
    await pick(/^Ran freely/, 'yes');
    await pick(/^Anything with calcium/, 'no');
    await press('Record');
    await sees(/this device takes nothing more to keep/);
    expect(await page.getByLabel('Saline').inputValue()).toBe('10');
    network.restore();
    await expect.poll(sync).toMatch(/online$/);
    await press('Record');
    await sees('Clear and colourless?');
    expect(await written('odette', 'flush')).toBe(1);
  });
});

it('a pause goes at once while something written before waits for somebody', async () => {
  await visitOf('wilhelmina');
  const { press, tick } = hands(page.getByRole('main'));
  await page.getByRole('button', { name: 'Pause', exact: true }).waitFor();
  network.cut();
  await press('Site looks well');
  await expect.poll(sync).toMatch(/1 waiting/);
  await putDayAhead(page);
  network.restore();
  await expect.poll(sync).toMatch(/1 needs you/);
  const before = await written('wilhelmina', 'infusion-paused');
  await press('A reaction: it stands still now');
  await expect.poll(async () => written('wilhelmina', 'infusion-paused')).toBe(before + 1);
  // Going on has time: what waits is settled first, and nobody is sent to the paper sheet for it.
  await tick(lookedAlong);
  await press('It runs again');
  await hands(page).sees(/is not in the notes yet and waits for somebody: settle it first/);
  expect(await written('wilhelmina', 'infusion-resumed')).toBe(1);
});
