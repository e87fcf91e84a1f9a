/** A running dose is held by one device: another pauses it at once and holds it from then on; going on elsewhere asks first. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { listToday, packChecked, planToday, wilhelmina } from '../../apps/server/test/support/at-the-chair.ts';
import { setUp } from '../../apps/server/test/support/own-server.ts';
import { hands } from '../support/hands.ts';
import { type Service, checked, service, tablet } from '../support/service.ts';
import { lookedAlong } from '../support/visit-by-hand.ts';

const patient = 'wilhelmina';
let at: Service;
let first: Page;
let second: Page;

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await planToday(at.server);
  await listToday(at.server, patient, 1, wilhelmina);
  await packChecked(at.server, patient);
  [first, second] = await Promise.all([
    at.signedIn('nurse', `/people/${patient}/visit`, tablet),
    at.signedIn('checker', `/people/${patient}/visit`, tablet),
  ]);
});
afterAll(() => at.close());

it('started at one screen, the other says where it is held', async () => {
  const { tick, press } = hands(first);
  await tick('full name');
  await tick('birth date');
  await tick(lookedAlong);
  await press('It runs now');
  await hands(first).sees('Recorded for Wilhelmina Arkwright-Poe: infusion started.');
  await hands(second).sees(/This drip is looked after at screen/);
});

it('who sees trouble pauses it where they stand; the first screen is told who holds it now', async () => {
  const { press, fill } = hands(second);
  await press(/^Pause/);
  await fill('Why it is paused', 'she asked for it');
  await press('It stands still now');
  await hands(first).sees(/Taken over at screen/);
  await checked(first, 'held-elsewhere');
});

it('going on at the first screen asks, and taking it over is in the notes', async () => {
  const { press, sees, tick } = hands(first);
  await tick(lookedAlong);
  // Why it stands still, and who stopped it, is read beside the button.
  await sees('she asked for it');
  await sees(/\(Chris Check\)/);
  await press(/^It runs again/);
  await sees(/This drip is looked after at screen \w+, not here/);
  await checked(first, 'take-over');
  await press('Take it over: go on at this screen');
  await hands(second).sees(/Taken over at screen/);
  const { entries } = await at.server.read<{ entries: { text: string; kind: string }[] }>(`/api/people/${patient}`);
  expect(entries.filter(({ kind }) => kind === 'dose-held')).toHaveLength(3);
});

it('who sees trouble stops it with the first press, whatever was written at the other screen meanwhile', async () => {
  await second.getByRole('heading', { name: 'Running' }).waitFor();
  await hands(second).press('Swelling or pain: it stands still now');
  await second.getByRole('heading', { name: 'Paused' }).waitFor();
  const { entries } = await at.server.read<{ entries: { text: string }[] }>(`/api/people/${patient}`);
  expect(entries.filter(({ text }) => text.includes('swelling or pain at the site'))).toHaveLength(1);
});
