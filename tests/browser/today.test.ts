/** Today with people in their chairs: late ones, who could come instead, chairs, whom to ask, and the other screen at the same time. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { listToday, planToday, readyToPrepare } from '../../apps/server/test/support/at-the-chair.ts';
import { people, referralOf, setUp, workUp } from '../../apps/server/test/support/own-server.ts';
import { hands } from '../support/hands.ts';
import { type Service, checked, desktop, service, tablet } from '../support/service.ts';

let at: Service;
let desk: Page;
let chairside: Page;

beforeAll(async () => {
  at = await service({ at: '2026-11-25T09:05' });
  await setUp(at.server);
  await planToday(at.server, 3);
  const listed = [
    ['wanda', 'Wanda', 'Ferreira', '1944-09-30', '999 204 7802'],
    ['olive', 'Olive', 'Tranter', '1939-02-11', '999 204 7810'],
  ] as const;
  for (const [index, [patient, given, family, born, number]] of listed.entries())
    await listToday(at.server, patient, index + 1, { given, family, born, number });
  await at.server.done(
    'clerk',
    referralOf('edda', { given: 'Edda', family: 'Marrow', born: '1947-07-19', number: '999 204 7829' }),
  );
  await workUp(at.server, 'edda');
  await readyToPrepare(at.server, 'wanda', 2);
  at.clock.moveOn(20);
  desk = await at.signedIn('clerk', '/', desktop);
  chairside = await at.signedIn('nurse', '/', tablet);
});
afterAll(() => at.close());

it('says who is late, who could come instead, and when the last can have left', async () => {
  const { press, sees } = hands(desk);
  await sees(/Olive Tranter is \d+ minutes late/);
  await sees('Could come instead:');
  await desk.getByRole('link', { name: 'Edda Marrow' }).waitFor();
  await sees(/the last can leave at \d\d:\d\d at the earliest/);
  await sees(`last with ${people.nurse.name}`);
  // No sooner than the earliest, by a rehearsal of what is left of the day.
  await press('When shall we likely be finished?');
  await sees(/As likely as not over by/);
  const said = (await desk.getByText(/As likely as not over by/).textContent()) ?? '';
  const [half = '', nineInTen = ''] = said.match(/\d\d:\d\d/g) ?? [];
  const earliest = /can leave at (\d\d:\d\d)/.exec((await desk.getByRole('main').textContent()) ?? '')?.[1] ?? '';
  expect([earliest, half, nineInTen].toSorted()).toEqual([earliest, half, nineInTen]);
  await checked(desk, 'today-late-desktop');
});

it('shows every chair, with who sits in it and at which step', async () => {
  const chairs = chairside.getByRole('region', { name: 'Chairs' });
  await chairs.getByRole('link', { name: 'Wanda Ferreira' }).waitFor();
  await chairs.getByText('preparation').waitFor();
  await expect.poll(async () => chairs.getByText('free').count()).toBe(5);
  await checked(chairside, 'today-chairs-tablet');
});

it('a prescriber’s exception stands there with its name, last day and reason, at once on both screens', async () => {
  await at.server.done('prescriber', {
    name: 'record',
    patient: 'olive',
    line: {
      kind: 'prescriber-exception',
      body: { requirement: 'teeth and jaw', reason: 'socket healed, seen', expiresOn: '2026-11-30' },
      effectiveAt: '2026-11-25',
    },
  });
  const says = "Prescriber's exception for teeth and jaw: Petra Press, until 30 Nov 2026: socket healed, seen";
  await hands(desk).sees(says);
  await hands(chairside).sees(says);
  await checked(chairside, 'today-exception-tablet');
});

it('an arrival recorded at the desk is in its chair on the other screen', async () => {
  const now = at.server.atHand.clock.local('Europe/London').moment;
  await at.server.done('clerk', {
    name: 'record',
    patient: 'olive',
    line: {
      kind: 'arrived',
      body: { session: 'thornbeck-2026-11-25', identifiers: ['full name', 'birth date'], chair: 4 },
      effectiveAt: now,
    },
  });
  const began = performance.now();
  await chairside.getByRole('region', { name: 'Chairs' }).getByRole('link', { name: 'Olive Tranter' }).waitFor();
  console.log(`in its chair at the other screen after ${Math.round(performance.now() - began)} ms`);
});

it('the telephone rings in the middle of a step: two taps, red flags first, and the step is as it was', async () => {
  const { fill, tickIn, pick, press, sees } = hands(chairside);
  await chairside.goto(`${at.url}/people/olive/visit`);
  await fill('Pulse', '71');
  await chairside.getByRole('link', { name: 'Advice call' }).click();
  await sees(/Olive Tranter · born/);
  await press('About somebody else');
  await fill('Whom is it about?', 'ferreira');
  await press(/Wanda Ferreira/);
  await sees(/Wanda Ferreira · born/);
  await expect.poll(async () => chairside.evaluate(() => document.activeElement?.tagName)).toBe('TEXTAREA');
  await tickIn('Ask first: any of these?', 'shaking chills');
  await sees(/A doctor must see you today/);
  await sees('Who takes the red flag on');
  await checked(chairside, 'call-red-flag-tablet');
  await fill('What they say, in their words', 'hot and shaking since Sunday');
  await pick('Who rings', 'family or carer');
  // The step below is looked at, the call is not lost.
  await chairside.getByRole('link', { name: 'Back to where you were' }).click();
  await expect.poll(async () => chairside.getByLabel(/^Pulse/).inputValue()).toBe('71');
  await chairside.getByRole('link', { name: 'Advice call' }).click();
  await fill('What you advised', 'her own doctor today, rung');
  await pick('Who takes the red flag on', `${people.prescriber.name}, prescriber`);
  await press('Write the call down');
  await sees(new RegExp(`${people.prescriber.name} takes the red flag on`));
  await chairside.getByRole('link', { name: 'Back to where you were' }).click();
  await expect.poll(async () => chairside.getByLabel(/^Pulse/).inputValue()).toBe('71');
  await desk.getByRole('link', { name: /red flags from calls 1/ }).click();
  await hands(desk).sees(/red flag: shaking chills/);
  await checked(desk, 'calls-desktop');
});

it('about somebody not found here it waits at the unit, until it is known whom it was about', async () => {
  const { fill, tickIn, pick, press, sees } = hands(desk);
  await desk.getByRole('link', { name: 'Advice call' }).first().click();
  await fill('Whom is it about?', 'zzyzx');
  await sees('Nobody is found by that.');
  await press('Not found here: write the call all the same');
  await fill('The name as it was said', 'Mrs Marrow or Morrow');
  await tickIn('Ask first: any of these?', 'none of these');
  await fill('What they say, in their words', 'asks about a vaccine on the same day');
  await pick('Who rings', 'care home');
  await fill('What you advised', 'we ring back');
  await checked(desk, 'call-not-found-desktop');
  await press('Write the call down');
  await sees(/It waits under “calls about somebody not found”/);
  await desk.getByRole('link', { name: 'Back to where you were' }).click();
  await press('Say whom it was about, or what was done');
  await fill('Whom is it about?', 'marrow');
  await press(/Edda Marrow/);
  await fill('How you know', 'birth date agrees');
  await press('Write it into their notes');
  await desk.getByRole('region', { name: 'About somebody not found' }).waitFor({ state: 'detached' });
});
