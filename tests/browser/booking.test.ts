/**
 * Places on lists: planned, booked, moved with trouble that is shown before it is taken on, given up, raced for, cancelled.
 * Bloods count 42 days (the demo's protocol): drawn on 23 Oct 2026 they last to 4 Dec 2026.
 */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { referralOf, setUp, workUp } from '../../apps/server/test/support/own-server.ts';
import { hands } from '../support/hands.ts';
import { type Service, checked, service } from '../support/service.ts';

let at: Service;
let nurse: Page;
const bloodsDrawn = '2026-10-23';

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  for (const [patient, given, family, number] of [
    ['wilhelmina', 'Wilhelmina', 'Arkwright-Poe', '999 204 7713'],
    ['ada', 'Ada', 'Brindle', '999 204 7721'],
    ['ottoline', 'Ottoline', 'Garrow', '999 204 7748'],
  ] as const) {
    await at.server.done('clerk', { ...referralOf(patient, { given, family, number }), on: '2026-10-20' });
    await workUp(at.server, patient, bloodsDrawn);
  }
  nurse = await at.signedIn('nurse', '/sessions');
});
afterAll(() => at.close());

type Kinds = { entries: { kind: string; text: string }[]; standing: { standing: string } };
const person = (patient: string): Promise<Kinds> => at.server.read<Kinds>(`/api/people/${patient}`);
const kindsOf = async (patient: string): Promise<string[]> => (await person(patient)).entries.map(({ kind }) => kind);

async function plan(on: string, arrivals: string): Promise<void> {
  const { follow, fill, press } = hands(nurse.getByRole('main'));
  await nurse.goto(`${at.url}/sessions`);
  await follow('Plan a session');
  await fill('Date', on);
  await nurse.getByLabel(/^Arrival times/).fill(arrivals);
  await press('Plan it');
  await nurse.getByRole('heading', { name: 'The list' }).waitFor();
}
const sessionButton = (page: Page, day: string) => page.getByRole('button', { name: new RegExp(`^${day}`) });

it('sessions are planned, with a word of warning on a day the unit does not open', async () => {
  const main = hands(nurse.getByRole('main'));
  await main.sees('No session is planned.');
  await main.follow('Plan a session');
  await main.fill('Date', '5 12 2026');
  await main.sees('The unit does not usually open on that weekday.');
  await checked(nurse, 'booking-plan');
  await plan('1 12 2026', '09:00 09:20');
  await nurse.getByRole('heading', { level: 1, name: 'Tuesday 1 December 2026' }).waitFor();
  await main.sees('0 of 2 places taken');
  await plan('10 12 2026', '09:00');
  const { sessions } = await at.server.read<{ sessions: { on: string; places: number }[] }>('/api/sessions');
  expect(sessions.map(({ on, places }) => [on, places])).toEqual([
    ['2026-12-01', 2],
    ['2026-12-10', 1],
  ]);
});

it('a place inside the window', async () => {
  await nurse.goto(`${at.url}/people/wilhelmina`);
  const { follow, press, pick, sees } = hands(nurse.getByRole('main'));
  await follow('Book a place');
  await sessionButton(nurse, 'Tue 1 Dec 2026').waitFor();
  await expect
    .poll(async () => sessionButton(nurse, 'Thu 10 Dec 2026').count(), {
      message: 'outside the window it is not offered',
    })
    .toBe(0);
  await sessionButton(nurse, 'Tue 1 Dec 2026').click();
  await sees(/inside the window/);
  await expect.poll(async () => nurse.getByText('Trouble on that date').count()).toBe(0);
  await pick('Arrival time', '09:00');
  await checked(nurse, 'booking-inside');
  await press('Book this place');
  await sees(/^Booked: 1 Dec 2026, 09:00/);
  await expect.poll(async () => kindsOf('wilhelmina')).toContain('place-booked');
  await expect.poll(async () => (await person('wilhelmina')).standing.standing).toBe('booked');
});

it('what they need stands beside the place, and is booked with whom, for when', async () => {
  await at.server.done('clerk', {
    name: 'record',
    patient: 'wilhelmina',
    line: { kind: 'contact', body: { needs: ['hospital transport', 'hoist'] }, effectiveAt: '2026-11-25' },
  });
  const { follow, press, fill, sees } = hands(nurse.getByRole('main'));
  // In the work at once, by the day of the place, and not called late before it.
  await nurse.goto(`${at.url}/work?what=transport%2C%20interpreter%20or%20hoist%20to%20book`);
  await sees('Transport and hoist for 1 Dec 2026');
  expect(await nurse.getByRole('row', { name: /Transport and hoist/ }).innerText()).not.toContain('late');
  await nurse.goto(`${at.url}/people/wilhelmina`);
  await follow('transport to be booked');
  await press('The transport is booked');
  await fill('Booked with', 'transport desk');
  await fill('Their reference', 'T-4471');
  await fill('To be there at', '08:10');
  await press('Write the booking');
  await sees(/Transport booked with transport desk for 1 Dec 2026 at 08:10, T-4471/);
  await hands(nurse.getByRole('region', { name: /^hoist/ })).press('Not needed this time');
  await fill('Why it is not needed this time', 'walks with a frame again');
  await press('Write it down');
  await sees(/Hoist not needed this time: walks with a frame again/);
  await checked(nurse, 'booking-supports');
});

async function chooseOutside(page: Page): Promise<void> {
  await page.goto(`${at.url}/people/wilhelmina/book`);
  await page.getByRole('button', { name: 'Also outside the window' }).click();
  await sessionButton(page, 'Thu 10 Dec 2026').click();
  await page.getByRole('heading', { name: 'Trouble on that date' }).waitFor();
}

it('moved to a date where trouble appears: it is shown first, and a clerk may not take it on', async () => {
  const clerk = await at.signedIn('clerk', '/people/wilhelmina');
  await chooseOutside(clerk);
  const { pick, sees } = hands(clerk.getByRole('main'));
  await sees(/bloods of 23 Oct 2026 out of date/);
  await sees('A nurse, prescriber or pharmacist has to accept this.');
  await pick('Arrival time', '09:00');
  await pick('Who asked for the move', 'the patient');
  await expect.poll(async () => clerk.getByRole('button', { name: 'Move to this place' }).isDisabled()).toBe(true);
  await checked(clerk, 'booking-trouble-clerk');
  await nurse.unroute('**/api/acts');
  await clerk.context().close();
});

it('a nurse takes each trouble on by name, with a reason', async () => {
  await chooseOutside(nurse);
  const { pick, fill, press, sees } = hands(nurse.getByRole('main'));
  await pick('Arrival time', '09:00');
  await pick('Who asked for the move', 'the patient');
  await fill('Why it is moved', 'away until the ninth');
  const move = nurse.getByRole('button', { name: 'Move to this place' });
  await expect.poll(async () => move.isDisabled()).toBe(true);
  for (const accept of await nurse.getByRole('checkbox', { name: 'I have seen this and book all the same' }).all())
    await accept.check();
  await press('Move to this place');
  await sees(/^Not recorded/);
  await checked(nurse, 'booking-trouble-no-reason');
  // The field that lacks something says so, and no other.
  await expect.poll(async () => nurse.getByText('may not be empty', { exact: true }).count()).toBe(1);
  await fill('Reason for booking all the same', 'bloods are drawn again on 7 December');
  await press('Move to this place');
  await sees(/^Booked: 10 Dec 2026, 09:00/);
  const { entries } = await person('wilhelmina');
  expect(entries.filter(({ kind }) => kind === 'place-given-up')).toHaveLength(1);
  expect(entries.find(({ kind }) => kind === 'place-booked')?.text).toContain('bloods are drawn again on 7 December');
});

it('the transport of the old place is left behind: the list of the new one says it is to be moved', async () => {
  await nurse.goto(`${at.url}/people/wilhelmina/bookings`);
  const { press, fill, sees, follow } = hands(nurse.getByRole('main'));
  await sees(/for 1 Dec 2026 at 08:10, T-4471: to be moved/);
  await press('It is moved to the new place');
  await fill('Booked with', 'transport desk');
  await press('Write the booking');
  await sees(/Transport moved: with transport desk for 10 Dec 2026/);
  await follow('their page');
});

it('the list says who will not be ready on its date and why; Today says it too', async () => {
  await nurse.getByRole('link', { name: 'Sessions' }).click();
  await nurse.getByText('1 person will not be ready').waitFor();
  await checked(nurse, 'booking-sessions');
  await nurse.getByRole('link', { name: 'Thu 10 Dec 2026' }).click();
  const row = nurse.getByRole('row').filter({ hasText: 'Wilhelmina Arkwright-Poe' });
  await row.getByText(/bloods of 23 Oct 2026 out of date/).waitFor();
  await nurse.getByText(/1 person is not ready for this date as things stand/).waitFor();
  await checked(nurse, 'booking-list');
  await nurse.getByRole('link', { name: 'Today' }).click();
  const ahead = nurse.getByRole('region', { name: 'Not ready for Thu 10 Dec 2026' });
  await ahead
    .getByText('bloods of 23 Oct 2026 out of date; take bloods (creatinine and calcium) and weigh, by Tue 8 Dec 2026')
    .waitFor();
  await checked(nurse, 'booking-today-ahead');
});

it('the place is given up, with who asked and why', async () => {
  await nurse.goto(`${at.url}/people/wilhelmina/book`);
  const { fill, pick, press, sees, unfold } = hands(nurse.getByRole('main'));
  await unfold('give the place up');
  await pick('Who asked', 'the patient');
  await fill('Why it is given up', 'her daughter cannot drive her');
  await press('Give the place up');
  await sees(/^Waiting for a place/);
  await expect
    .poll(async () => (await person('wilhelmina')).entries.find(({ kind }) => kind === 'place-given-up')?.text)
    .toContain('her daughter cannot drive her');
});

it('what was booked for the place is to be cancelled, until somebody has', async () => {
  await nurse.goto(`${at.url}/`);
  await hands(nurse).follow(/transport, interpreter or hoist to move or cancel 1/);
  await nurse.getByRole('heading', { level: 1, name: /to move or cancel/ }).waitFor();
  await nurse.getByRole('rowheader').getByRole('link').click();
  const { press, fill, sees } = hands(nurse.getByRole('main'));
  await sees('They have no place.');
  await checked(nurse, 'booking-supports-left-behind');
  await press('It is cancelled');
  await fill('With whom it was cancelled', 'transport desk, Kim');
  await press('It is cancelled: write it down');
  await sees('Nothing is booked, and nothing in their needs asks for it.');
});

it('two people want the last place: one has it, the other is told so', async () => {
  await plan('2 12 2026', '09:00');
  const clerk = await at.signedIn('clerk', '/people/ada/book');
  await nurse.goto(`${at.url}/people/ottoline/book`);
  for (const page of [nurse, clerk]) {
    await sessionButton(page, 'Wed 2 Dec 2026').click();
    await hands(page).pick('Arrival time', '09:00');
  }
  // Both have pressed before either is heard: otherwise the slower one would see the place go and could press no more.
  const bothPressed = Promise.withResolvers<void>();
  let pressed = 0;
  for (const page of [nurse, clerk])
    await page.route('**/api/acts', async (route) => {
      pressed += 1;
      if (pressed === 2) bothPressed.resolve();
      await bothPressed.promise;
      await route.continue();
    });
  await Promise.all([nurse, clerk].map((page) => hands(page).press('Book this place')));
  const booked = async (patient: string) => (await person(patient)).standing.standing === 'booked';
  await expect.poll(async () => [await booked('ada'), await booked('ottoline')]).toContain(true);
  const adaWon = await booked('ada');
  expect(adaWon).not.toBe(await booked('ottoline'));
  const loser = adaWon ? nurse : clerk;
  await loser.getByText(/^place 1 taken/).waitFor();
  await loser.getByText('No place on this list is free any more.').waitFor();
  await expect.poll(async () => loser.getByRole('button', { name: 'Book this place' }).isDisabled()).toBe(true);
  await checked(loser, 'booking-race-lost');
  await clerk.context().close();
});

it('a session is cancelled with a reason, once everyone on it has been told', async () => {
  await nurse.getByRole('link', { name: 'Sessions' }).click();
  await nurse.getByRole('link', { name: 'Wed 2 Dec 2026' }).click();
  const { press, fill, sees, unfold } = hands(nurse.getByRole('main'));
  await unfold('cancel this session');
  // The one place just taken has to have reached this screen: whoever cancels on an older reading is refused for that.
  await sees(/1 person is on the list/);
  await fill('Why', 'no nurse for the chair');
  await press('Cancel the session');
  await sees(/move or release every place first/);
  const [winner = ''] = (
    await Promise.all(['ada', 'ottoline'].map(async (each) => [each, (await person(each)).standing.standing] as const))
  ).flatMap(([each, standing]) => (standing === 'booked' ? [each] : []));
  await nurse.goto(`${at.url}/people/${winner}/book`);
  await unfold('give the place up');
  await hands(nurse).pick('Who asked', 'the unit');
  await fill('Why it is given up', 'no nurse for the chair');
  await press('Give the place up');
  await sees(/^Waiting for a place/);
  await nurse.getByRole('link', { name: 'Sessions' }).click();
  await nurse.getByRole('link', { name: 'Wed 2 Dec 2026' }).click();
  await unfold('cancel this session');
  await press('Cancel the session');
  await sees(/^Not recorded/);
  await fill('Why', 'no nurse for the chair');
  await press('Cancel the session');
  await sees('This session is cancelled.');
  await checked(nurse, 'booking-cancelled');
  const { sessions } = await at.server.read<{ sessions: { on: string; cancelled: boolean }[] }>('/api/sessions');
  expect(sessions.filter(({ cancelled }) => cancelled).map(({ on }) => on)).toEqual(['2026-12-02']);
});
