/** A place inside the window; trouble on a later date shown before it is confirmed; one place, two who want it. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { referralOf, setUp, workUp } from '../../apps/server/test/support/own-server.ts';
import { type Hands, hands } from '../support/hands.ts';
import { type Service, checked, service } from '../support/service.ts';

let at: Service;
let clerk: Page;
let nurse: Page;
let desk: Hands;

const plan = (on: string, arriveAt: readonly string[]) =>
  at.server.done('nurse', {
    name: 'plan session',
    session: `thornbeck-${on}`,
    body: { unit: 'thornbeck', on, zone: 'Europe/London', arriveAt, opensAt: '08:30', closesAt: '17:00' },
  });

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await at.server.done('clerk', referralOf('wilhelmina'));
  await workUp(at.server, 'wilhelmina');
  await at.server.done(
    'clerk',
    referralOf('ada', { given: 'Ada', family: 'Brindle', born: '1940-02-29', number: '999 204 7721' }),
  );
  await workUp(at.server, 'ada');
  await plan('2026-12-02', ['09:00', '09:20']);
  await plan('2026-12-09', ['09:00']);
  // Six weeks after the sample of 24 November: the bloods have run out by then.
  await plan('2027-01-13', ['09:00', '09:20']);
  clerk = await at.signedIn('clerk', '/people/wilhelmina/book');
  nurse = await at.signedIn('nurse', '/people/ada/book');
  desk = hands(clerk.getByRole('main'));
});
afterAll(() => at.close());

const standingOf = async (patient: string): Promise<string> =>
  (await at.server.read<{ standing: { standing: string } }>(`/api/people/${patient}`)).standing.standing;

it('only sessions inside the window are offered at first', async () => {
  await desk.sees(/Wed 2 Dec 2026/);
  expect(await clerk.getByText(/Wed 13 Jan 2027/).count()).toBe(0);
  await checked(clerk, 'booking-choice');
});

it('a place inside the window is booked by a clerk, every requirement looked at for that date', async () => {
  await desk.press(/Wed 2 Dec 2026/);
  await desk.sees(/ready/i);
  await desk.pick('Arrival time', '09:00');
  await checked(clerk, 'booking-check');
  await clerk.getByRole('button', { name: /^Book/ }).last().click();
  await expect.poll(() => standingOf('wilhelmina')).toBe('booked');
});

it("a date after the bloods run out is trouble: named, and not a clerk's to accept", async () => {
  await clerk.goto(`${at.url}/people/wilhelmina/book`);
  await desk.press('Also outside the window');
  await desk.press(/Wed 13 Jan 2027/);
  await desk.sees(/bloods of 24 Nov 2026/);
  await checked(clerk, 'booking-trouble-clerk');
  const refused = await at.server.act('clerk', {
    name: 'move',
    patient: 'wilhelmina',
    from: 'thornbeck-2026-12-02',
    to: 'thornbeck-2027-01-13',
    place: 1,
    reason: 'asked for January',
    askedBy: 'the patient',
    accepts: { causes: ['kidney-function', 'calcium'], reason: 'new bloods will come' },
  });
  expect([403, 422]).toContain(refused.statusCode);
});

it("the session's list shows, today, who will not be ready on its date and why", async () => {
  await at.server.done('nurse', {
    name: 'record',
    patient: 'wilhelmina',
    line: { kind: 'illness', body: { what: 'vomiting for three days', sort: 'illness' }, effectiveAt: '2026-11-25' },
  });
  await nurse.goto(`${at.url}/sessions/thornbeck-2026-12-02`);
  const list = hands(nurse.getByRole('main'));
  await list.sees(/Arkwright-Poe/);
  await list.sees(/not ready/);
  await list.sees(/unwell/);
  await checked(nurse, 'booking-session-trouble');
  await nurse.goto(`${at.url}/`);
  await hands(nurse.getByRole('main')).sees(/Arkwright-Poe/);
  await checked(nurse, 'booking-today-trouble');
});

it('of two who want the last place one gets it, and the other is told plainly', async () => {
  const book = (patient: string, by: 'clerk' | 'nurse') =>
    at.server.act(by, { name: 'book', patient, session: 'thornbeck-2026-12-09', place: 1 });
  await at.server.done(
    'clerk',
    referralOf('cora', { given: 'Cora', family: 'Mallow', born: '1945-07-07', number: '999 204 7738' }),
  );
  await workUp(at.server, 'cora');
  const answers = await Promise.all([book('ada', 'clerk'), book('cora', 'nurse')]);
  expect(answers.map(({ statusCode }) => statusCode).toSorted((a, b) => a - b)).toEqual([200, 422]);
  const loser = answers.find(({ statusCode }) => statusCode === 422);
  expect(loser?.json<{ refusals: { name: string }[] }>().refusals[0]?.name).toBe('place-taken');
});

it('a place is given up with a reason, and the person waits for another', async () => {
  await clerk.goto(`${at.url}/people/wilhelmina/book`);
  await clerk.getByText('give the place up').first().click();
  await desk.pick('Who asked', 'the patient');
  await desk.fill('Why', 'transport not possible');
  await checked(clerk, 'booking-give-up');
  await desk.press('Give the place up');
  await expect.poll(() => standingOf('wilhelmina')).not.toBe('booked');
  const { entries } = await at.server.read<{ entries: { kind: string; text: string }[] }>('/api/people/wilhelmina');
  expect(entries.find(({ kind }) => kind === 'place-given-up')?.text).toContain('transport not possible');
});
