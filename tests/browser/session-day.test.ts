/** A session opened by two registered people, closed when nobody is without an outcome, and handed over: at two tablets. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { listToday, planToday } from '../../apps/server/test/support/at-the-chair.ts';
import { password, people, setUp } from '../../apps/server/test/support/own-server.ts';
import { hands } from '../support/hands.ts';
import { type Service, checked, desktop, service, tablet } from '../support/service.ts';

const session = 'thornbeck-2026-11-25';
let at: Service;
let nurse: Page;
let other: Page;

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await planToday(at.server);
  const who = { given: 'Wanda', family: 'Ferreira', born: '1944-09-30', number: '999 204 7802' };
  await listToday(at.server, 'wanda', 1, who);
  await at.server.done('pharmacist', {
    name: 'receive packs',
    body: {
      unit: 'thornbeck',
      batch: 'PA-2391',
      product: 'zoledronic acid 5 mg in 100 mL',
      expiresOn: '2028-04-30',
      packs: 12,
    },
  });
  nurse = await at.signedIn('nurse', `/sessions/${session}/day`, tablet);
  other = await at.signedIn('checker', '/', desktop);
});
afterAll(() => at.close());

async function smallTargets(page: Page): Promise<string[]> {
  return page
    .getByRole('main')
    .locator('form button, form input:not([type=radio]):not([type=checkbox]), form select, form label:has(input)')
    .evaluateAll((all) =>
      all
        .map((one) => ({ height: one.getBoundingClientRect().height, says: one.textContent || one.outerHTML }))
        .filter(({ height }) => height > 0 && height < 48)
        .map(({ height, says }) => `${says}: ${height} px`),
    );
}

describe('opening', () => {
  it('says first that it is not open, and what is known to go wrong', async () => {
    const { sees } = hands(nurse);
    await sees('not open yet');
    await sees('Everybody on this list and the next one is ready, as far as is known.');
    await hands(other).sees('The session is not open yet.');
    await checked(nurse, 'session-to-open');
    await checked(other, 'today-not-open');
    await expect.poll(async () => smallTargets(nurse)).toEqual([]);
  });

  it('competences are written with the day until which they count', async () => {
    const lead = await at.signedIn('lead', `/sessions/${session}/day`, tablet);
    for (const page of [lead, nurse]) await hands(page).unfold('competences of the staff');
    await hands(nurse).sees('What you have shown yourself is written by another nurse in charge or the service lead.');
    const offered = await nurse.getByLabel('Who', { exact: true }).locator('option').allTextContents();
    expect([offered.includes(people.checker.name), offered.includes(people.nurse.name)]).toEqual([true, false]);
    for (const [page, name, what] of [
      [lead, people.nurse.name, 'medicines into a vein'],
      [lead, people.nurse.name, 'life support'],
      [nurse, people.checker.name, 'medicines into a vein'],
    ] as const) {
      const { choose, pick, fill, press, sees } = hands(page);
      await choose('Who', name);
      await pick('Has shown', what);
      await fill('Counts until', '30 6 2027');
      await press('Record the competence');
      await sees(new RegExp(`${name}:.*${what} until 30 Jun 2027`));
    }
    await checked(nurse, 'session-competences');
  });

  it('with one registered person it does not open, and says what to do', async () => {
    const { tickIn, pick, fill, press, sees } = hands(nurse);
    const here = 'Who is here';
    // Nobody to choose yet: both lists say what to do first.
    await expect.poll(async () => nurse.getByText('Tick first who is here.').count()).toBe(2);
    await tickIn(
      here,
      `${people.nurse.name}, nurse in charge: medicines into a vein until 30 Jun 2027, life support until 30 Jun 2027`,
    );
    await tickIn('Who may make the second check', people.nurse.name);
    await pick('Who looked at the emergency kit', people.nurse.name);
    await pick('Is everything in it?', 'yes');
    await fill('What in it runs out first', '03 2027');
    await fill('Chairs in use', '6');
    await fill('Packs of PA-2391 on the shelf', '12');
    await press('Open the session');
    await sees(/1 registered person is here whose competence for medicines into a vein is in date; 2 are needed/);
    await sees(/call somebody in, or move everyone on the list/);
    await checked(nurse, 'session-does-not-open');
  });

  it('with two it opens, and the other tablet knows', async () => {
    const { tickIn, press, sees } = hands(nurse);
    // Somebody else has begun the same form.
    const beside = await at.signedIn('checker', `/sessions/${session}/day`, tablet);
    await hands(beside).sees('not open yet');
    await tickIn('Who is here', `${people.checker.name}, nurse: medicines into a vein until 30 Jun 2027`);
    await tickIn('Who may make the second check', people.checker.name);
    await press('Open the session');
    await sees(`Second checkers: ${people.nurse.name}, ${people.checker.name}`);
    const began = performance.now();
    await hands(other).sees('The session is open.');
    console.log(`open at the other screen after ${Math.round(performance.now() - began)} ms`);
    await checked(nurse, 'session-open');
    await hands(beside).sees(`${people.nurse.name} has opened the session meanwhile.`);
    await checked(beside, 'session-opened-by-another');
    await beside.close();
  });
});

describe('while it is open', () => {
  it('a nurse from the bank gets an account for today, vouched for by another, and can be named here', async () => {
    const { unfold, fill, press, sees, tickIn } = hands(nurse);
    await unfold('a nurse from the bank');
    await fill('Their name', 'Bea Bank');
    await fill('Their registration', '24B 0913E');
    await tickIn('What you have seen that they can do', 'medicines into a vein');
    await fill('Their username', 'bea.bank');
    await fill('Their password for today', 'a word for one day');
    await fill('Your own password', password);
    await fill('Username of who vouches', people.nurse.username);
    await fill('Password of who vouches', password);
    await press('Make the account for today');
    await sees('Another registered person who works here, not only for today, proves who has come.');
    await checked(nurse, 'session-bank-nurse-refused');
    await fill('Username of who vouches', people.checker.username);
    await press('Make the account for today');
    await sees('Bea Bank can sign in today as bea.bank.');
    await checked(nurse, 'session-bank-nurse');
    await press('Staff, kit or chairs have changed');
    await nurse
      .getByRole('checkbox', { name: 'Bea Bank, nurse, for today only: medicines into a vein until 25 Nov 2026' })
      .waitFor();
    await press('Staff, kit or chairs have changed');
    await hands(await at.signedIn('administrator', '/settings', desktop)).sees(
      /for 25 Nov 2026 only, registration 24B/,
    );
  });

  it('one registered person left: said, nothing begins, and put right again', async () => {
    const { press, sees, tickIn } = hands(nurse);
    await press('Staff, kit or chairs have changed');
    const left = `${people.checker.name}, nurse: medicines into a vein until 30 Jun 2027`;
    await nurse.getByRole('group', { name: 'Who is here' }).getByRole('checkbox', { name: left }).uncheck();
    await press('Write it anew');
    await sees(/1 registered person is here.*Until that is put right no medicine is started; what runs goes on/);
    await checked(nurse, 'session-one-left');
    await press('record it as typed: I looked');
    await sees('No medicine is started now:');
    await hands(other).sees('No medicine is started now:');
    await checked(other, 'today-one-left');
    await press('Staff, kit or chairs have changed');
    await tickIn('Who is here', left);
    await tickIn('Who may make the second check', people.checker.name);
    await press('Write it anew');
    await nurse.getByText('No medicine is started now:').waitFor({ state: 'detached' });
    await sees(/as it is since/);
    await sees('Counted: 12 packs of PA-2391.');
    await other.getByText('No medicine is started now:').waitFor({ state: 'detached' });
  });
});

describe('who looks after whom', () => {
  it('is shared out by one press, stands on the list at the other screen, and is taken over there in one tap', async () => {
    const { press, sees } = hands(nurse);
    await sees('1 person has no named nurse who is here.');
    await press('Share them out in turn');
    await nurse.getByText('1 person has no named nurse who is here.').waitFor({ state: 'detached' });
    await expect.poll(async () => nurse.getByLabel('Wanda Ferreira').inputValue()).not.toBe('');
    await checked(nurse, 'session-looked-after');
    await hands(other).sees(`nurse ${people.nurse.name}`);
    await other.getByRole('button', { name: /^I take over/ }).click();
    await hands(other).sees(`nurse ${people.checker.name}`);
    await other.getByRole('link', { name: 'mine', exact: true }).click();
    await hands(other).sees('Wanda Ferreira');
    await checked(other, 'today-mine');
    await nurse.goto(`${at.url}/people/wanda/visit`);
    await sees(`Nurse ${people.checker.name}`);
    await checked(nurse, 'visit-named-nurse');
    await press(/^I take over/);
    await sees(`Nurse ${people.nurse.name}`);
    await other.getByText('You look after nobody on today’s list.').waitFor();
    await nurse.goto(`${at.url}/sessions/${session}/day`);
    await other.getByRole('link', { name: 'everybody', exact: true }).click();
  });
});

describe('closing', () => {
  it('names who has no outcome; with a reason it closes', async () => {
    const { fill, pick, press, sees, unfold } = hands(nurse);
    await unfold('close the session');
    await sees('Still expected');
    await expect.poll(async () => nurse.getByRole('listitem').getByText('(09:00)').count()).toBe(1);
    at.clock.moveOn(60);
    await nurse.reload();
    await sees('Has not come, and nothing says why');
    await expect.poll(async () => nurse.getByLabel(/does not add up/).count()).toBe(0);
    await fill('Packs of PA-2391 on the shelf', '11');
    await fill('What is left to do', 'ring Mrs Ferreira tomorrow');
    await pick('Handed over to', people.checker.name);
    await expect.poll(async () => smallTargets(nurse)).toEqual([]);
    await press('Close the session');
    await sees(/By the sum 12 of batch PA-2391 are left; 11 were counted/);
    await checked(nurse, 'session-does-not-close');
    await at.server.done('clerk', {
      name: 'record',
      patient: 'wanda',
      line: {
        kind: 'call',
        body: { route: 'telephone', about: 'place', reached: false, note: 'rang twice' },
        effectiveAt: '2026-11-25',
      },
    });
    await sees('Everybody on the list has an outcome, and every letter is signed.');
    await fill('If PA-2391 does not add up: what is known', 'one bottle fell');
    await press('Close the session');
    await sees('Handed over to Chris Check');
    await checked(nurse, 'session-closed');
  });

  it('the person it is for accepts it at her own screen', async () => {
    // At the shared screen the fields say whose name is asked for, and the writer's own is refused.
    const { fill: fillIn, press: pressHere, sees: seesHere } = hands(nurse);
    await fillIn(`Username of ${people.checker.name}`, people.nurse.username);
    await fillIn(`Password of ${people.checker.name}`, password);
    await pressHere('I have read it and take it on');
    await seesHere(/You wrote the handover: the person it is for accepts it/);
    await hands(other).sees('The session is closed; the handover waits.');
    await other.getByRole('link', { name: 'Read the handover' }).click();
    const { press, sees } = hands(other);
    await sees('ring Mrs Ferreira tomorrow');
    await checked(other, 'handover');
    await press('I have read it and take it on');
    await sees(/Accepted by Chris Check/);
    await hands(nurse).sees(/Accepted by Chris Check/);
  });

  it('somebody comes after all: it is opened again as it stood, and waits to be closed again', async () => {
    const { press, sees } = hands(nurse);
    await press('Open it again: somebody is still to be seen');
    await press('Open it again');
    await sees(`Second checkers: ${people.nurse.name}, ${people.checker.name}`);
    await sees('What is left to do');
    await other.getByText(/Accepted by Chris Check/).waitFor({ state: 'detached' });
  });
});
