/**
 * The network goes in the middle of a session: the app opens and works from what this device keeps, what is written waits and is
 * sent once, what two people wrote comes to a person, and nothing clinical stays when the session is closed. Each browser has a
 * network of its own that can really be cut.
 */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { lineNow, listToday, planToday } from '../../apps/server/test/support/at-the-chair.ts';
import { password, people, referralOf, setUp } from '../../apps/server/test/support/own-server.ts';
import { entriesOf as entriesInLedger } from '../../apps/server/src/register/notes.ts';
import { type Cuttable, overACuttableNetwork } from '../support/over-a-cuttable-network.ts';
import { putDayAhead } from '../support/device-clock.ts';
import { hands, signIn } from '../support/hands.ts';
import { keptOn, namesKept } from '../support/kept-on-device.ts';
import { type Service, checked, service } from '../support/service.ts';
import { lookedAlong } from '../support/visit-by-hand.ts';

const session = 'thornbeck-2026-11-25';
let at: Service;
let network: Cuttable;
let page: Page;
/** Acts as the browser sent them. */
const sent: { readonly act: { readonly patient: string } }[] = [];

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await planToday(at.server);
  for (const [index, [patient, given, family]] of [
    ['wanda', 'Wanda', 'Ferreira'],
    ['ada', 'Ada', 'Brindle'],
    ['otto', 'Otto', 'Lindqvist'],
  ].entries())
    await listToday(at.server, patient ?? '', index + 1, {
      given: given ?? '',
      family: family ?? '',
      born: `194${index}-09-30`,
      number: `999 204 780${index + 2}`,
    });
  await at.server.done(
    'clerk',
    referralOf('ingrid', { given: 'Ingrid', family: 'Nystrom', born: '1950-01-02', number: '999 204 7810' }),
  );
  ({ network, page } = await overACuttableNetwork(at));
}, 60_000);
afterAll(async () => {
  await network.close();
  await at.close();
});

const sync = (where: Page) => where.getByLabel('Sync');
const says = async (where: Page, words: RegExp): Promise<void> =>
  expect.poll(async () => sync(where).textContent()).toMatch(words);

const ledgerOf = async (patient: string) =>
  entriesInLedger(at.server.atHand.store, await at.server.atHand.notes.of('patient', patient));

const entriesOf = async (patient: string, kind: string) => {
  const { entries } = await at.server.read<{
    entries: { kind: string; at?: string; recordedAt: string; text: string }[];
  }>(`/api/people/${patient}`);
  return entries.filter((entry) => entry.kind === kind);
};

async function arrive(where: Page, chair?: string): Promise<void> {
  const main = where.getByRole('main');
  await main.getByRole('heading', { name: 'Arrived' }).waitFor();
  await main.getByRole('checkbox', { name: 'full name' }).check({ force: true });
  await main.getByRole('checkbox', { name: 'birth date' }).check({ force: true });
  if (chair !== undefined) await main.getByRole('radio', { name: chair, exact: true }).check({ force: true });
  await main.getByRole('button', { name: 'They are here' }).click();
}

async function observe(where: Page): Promise<void> {
  const { fill, pick, press, sees } = hands(where.getByRole('main'));
  await sees('Observations');
  for (const [label, value] of [
    ['Systolic pressure', '130'],
    ['Diastolic pressure', '76'],
    ['Pulse', '72'],
    ['Temperature', '36.8'],
    ['Oxygen saturation', '97'],
  ] as const)
    await fill(label, value);
  await pick('A new irregular pulse?', 'no');
  await where.getByLabel('Weight today: value').fill('64.0');
  await pick('Weight today', 'kg');
  await press('Record');
}

it('today’s list, the visits of those on it, the protocol and the day sheet are kept, and nobody else’s', async () => {
  await keptOn(page, 3);
  const names = await namesKept(page);
  expect(names).toEqual(
    expect.arrayContaining(
      ['me', `sessions/${session}/day-sheet`, 'protocols?unit=thornbeck', 'today?unit=thornbeck'].map(
        (path) => `answers: "/api/${path}"`,
      ),
    ),
  );
  await page.goto(`${network.url}/people/ingrid`);
  await hands(page).sees('Ingrid');
  await page.goto(network.url);
  await expect.poll(async () => (await namesKept(page)).filter((name) => name.includes('ingrid'))).toEqual([]);
});

describe('the network goes', () => {
  it('in the middle of a step: what was asked arrives, its answer does not, and it is recorded once', async () => {
    await says(page, /online$/);
    await page.goto(`${network.url}/people/wanda/visit`);
    await page.getByRole('heading', { name: 'Arrived' }).waitFor();
    network.loseAnswers();
    await arrive(page, '2');
    await expect.poll(async () => entriesOf('wanda', 'arrived')).toHaveLength(1);
    network.cut();
    await says(page, /offline since .* · 1 waiting/);
  }, 40_000);

  it('the next step is there and waits behind it; the state is said in words', async () => {
    await observe(page);
    await hands(page).sees('Questions of the day');
    await says(page, /2 waiting/);
    await checked(page, 'offline-visit', { settles: false });
  });

  it('the tab is closed and the app opened again without a network: the day is there, with what waits', async () => {
    const context = page.context();
    await page.close();
    page = await context.newPage();
    page.setDefaultTimeout(60_000);
    const began = performance.now();
    await page.goto(network.url);
    await page.getByRole('heading', { level: 1 }).waitFor();
    console.log(`opened without a network after ${Math.round(performance.now() - began)} ms`);
    await says(page, /offline since .* · 2 waiting/);
    await checked(page, 'offline-today', { settles: false });
    await page.goto(`${network.url}/people/wanda/visit`);
    await hands(page).sees('Questions of the day');
    await page.goto(`${network.url}/people/ada/visit`);
    await arrive(page);
    await says(page, /3 waiting/);
    await sync(page).getByRole('link').click();
    await hands(page).sees('3 entries wait');
    await checked(page, 'offline-waiting', { settles: false });
  });

  it('the day sheet can be printed from what is kept', async () => {
    await page.goto(`${network.url}/sessions/${session}/sheet`);
    await page.frameLocator('iframe').getByRole('heading', { name: 'Wanda Ferreira' }).waitFor();
  });

  it('when it comes back each is in the notes once, at the time it happened, with the device’s own time beside it', async () => {
    page.on('request', (request) => {
      if (request.url().endsWith('/api/acts')) sent.push(request.postDataJSON() as (typeof sent)[number]);
    });
    network.restore();
    await says(page, /online$/);
    expect(sent.map(({ act: { patient } }) => patient)).toEqual(['wanda', 'wanda', 'ada']);
    for (const [patient, kind] of [
      ['wanda', 'arrived'],
      ['wanda', 'observations'],
      ['wanda', 'weight'],
      ['ada', 'arrived'],
    ] as const) {
      const found = (await entriesOf(patient, kind)).filter(({ at: when }) => when !== undefined);
      expect(found, `${patient}: ${kind}`).toHaveLength(1);
    }
    const [observed] = await entriesOf('wanda', 'observations');
    expect(Date.parse(observed?.at ?? '')).toBeLessThan(Date.parse(observed?.recordedAt ?? ''));
    const timed = (await ledgerOf('wanda')).filter(({ deviceAt }) => deviceAt !== undefined);
    expect(timed.map(({ kind }) => kind).toSorted()).toEqual(['observations', 'weight']);
  });

  it('the act that waited is sent a second time: recorded once', async () => {
    const act = sent.find(({ act: { patient } }) => patient === 'ada');
    const again = await at.server.ask('/api/acts', { method: 'POST', as: 'nurse', body: act });
    expect(again.json<{ outcome: string }>().outcome).toBe('already-recorded');
    await expect.poll(async () => entriesOf('ada', 'arrived')).toHaveLength(1);
  });
});

/** Opened by two registered people, everybody put off and gone, closed and handed over: as the other tablet would. */
async function closeSession(): Promise<void> {
  const { server } = at;
  const staff = (who: 'nurse' | 'checker') => server.atHand.accounts.named(people[who].username)?.staff ?? '';
  for (const [who, what] of [
    ['nurse', 'medicines into a vein'],
    ['nurse', 'life support'],
    ['checker', 'medicines into a vein'],
  ] as const)
    await server.done('lead', {
      name: 'record competence',
      unit: 'thornbeck',
      body: { staff: staff(who), role: 'nurse', what, until: '2027-06-30' },
    });
  await server.done('nurse', {
    name: 'open session',
    session,
    unit: 'thornbeck',
    body: {
      present: [
        { staff: staff('nurse'), role: 'nurse' },
        { staff: staff('checker'), role: 'nurse' },
      ],
      secondCheckers: [staff('nurse'), staff('checker')],
      kit: { checkedBy: staff('nurse'), complete: true, expiresOn: '2027-03-31' },
      chairs: 6,
      counts: [],
    },
  });
  for (const patient of ['wanda', 'ada', 'otto']) {
    const { seq } = await server.read<{ seq: number }>(`/api/people/${patient}/visit`);
    await server.done(
      'nurse',
      {
        name: 'decide',
        patient,
        decision: 'put off',
        reasonCode: 'no staff or chair',
        couldHaveBeenSeen: 'only today',
        nextStep: 'ring on Friday, then another place',
        nextBy: '2026-12-04',
        nextOwner: 'nurse',
        tellsThePatient: 'told at the chair',
      },
      { seen: { [`patient/${patient}`]: seq } },
    );
    await server.done('nurse', lineNow(server, patient, 'left', { cardGiven: true }));
    const letter = { to: 'family doctor', about: 'put off', version: '1', text: 'Dear Dr Penrose' };
    await server.done('nurse', lineNow(server, patient, 'letter', letter));
  }
  await server.done('nurse', {
    name: 'close session',
    session,
    body: { counts: [], handover: 'ring all three', to: staff('checker') },
  });
}

describe('what waits for a person', () => {
  it('two tablets wrote the same step: mine and the notes stand beside one another, and one goes with a reason', async () => {
    await page.goto(`${network.url}/people/otto/visit`);
    await page.getByRole('heading', { name: 'Arrived' }).waitFor();
    network.cut();
    await arrive(page, '3');
    await says(page, /1 waiting/);
    await at.server.done(
      'checker',
      lineNow(at.server, 'otto', 'arrived', { session, identifiers: ['full name', 'number'], chair: 5 }),
    );
    network.restore();
    await says(page, /online · 1 needs you/);
    await sync(page).getByRole('link').click();
    const { sees, fill, press } = hands(page.getByRole('main'));
    await sees(/Somebody wrote in these notes/);
    await sees(/arrived.*chair 5/);
    await checked(page, 'conflict', { settles: false });
    await fill('Or let it go: why it does not stand', 'Chris had written it at the other tablet');
    await press('Let mine go');
    await says(page, /online$/);
    await expect.poll(async () => entriesOf('otto', 'arrived')).toHaveLength(1);
    const [gone] = await entriesOf('otto', 'not-taken-in');
    expect(gone?.text).toContain('Chris had written it at the other tablet');
  });

  it('a clock that was moved while the network was away makes the time doubtful: it is asked about', async () => {
    await page.goto(`${network.url}/people/otto/visit`);
    await hands(page).sees('Observations');
    network.cut();
    await observe(page);
    await says(page, /1 waiting/);
    await putDayAhead(page);
    network.restore();
    await says(page, /1 needs you/);
    await sync(page).getByRole('link').click();
    await hands(page).sees(/clock of this device was moved/);
    await hands(page).fill('Send it all the same: why it stands', 'the clock on the wall said ten to nine');
    await hands(page).press('I have read it: send mine');
    await says(page, /online$/);
    await expect.poll(async () => entriesOf('otto', 'observations')).toHaveLength(1);
    const [why] = await entriesOf('otto', 'sent-all-the-same');
    expect(why?.text).toContain('because the clock on the wall said ten to nine');
  });

  it('with a clock that is a day wrong all the time, what is written offline has the right time', async () => {
    // It goes on from here a day ahead: the same at both ends, so nothing is doubtful.
    await page.goto(`${network.url}/people/ada/visit`);
    await hands(page).sees('Observations');
    network.cut();
    await observe(page);
    await says(page, /1 waiting/);
    network.restore();
    await says(page, /online$/);
    const [observed] = await entriesOf('ada', 'observations');
    const apart = Date.parse(observed?.recordedAt ?? '') - Date.parse(observed?.at ?? '');
    expect(apart).toBeGreaterThanOrEqual(-1000);
    expect(apart).toBeLessThan(60_000);
  });
});

describe('what does not wait', () => {
  it('the start of an infusion: the second person cannot be verified', async () => {
    await page.goto(`${network.url}/people/wanda/visit?step=infusion`);
    const main = hands(page.getByRole('main'));
    await main.sees('Start the infusion');
    network.cut();
    await main.tick('full name');
    await main.tick('birth date');
    await main.fill('To run in', '30');
    await main.tick(lookedAlong);
    await main.press('It runs now');
    await main.sees(/the second person cannot be verified: the infusion is not started here. Use the paper day sheet/);
    await says(page, /offline since \d\d:\d\d$/);
    network.restore();
  });
});

describe('nothing clinical stays', () => {
  const clinical = async () => (await namesKept(page)).filter((name) => !name.startsWith('keys'));

  it('when somebody leaves', async () => {
    await page.goto(network.url);
    await keptOn(page, 3);
    await page.getByRole('button', { name: 'leave' }).click();
    await expect.poll(clinical).toEqual([]);
    await signIn(page, people.nurse.username, password);
  });

  it('when the session is closed', async () => {
    await page.goto(network.url);
    await keptOn(page, 3);
    await closeSession();
    await expect.poll(clinical).toEqual([]);
    network.cut();
    const context = page.context();
    await page.close();
    page = await context.newPage();
    await page.goto(network.url);
    await page.getByText('Anaphylaxis card').waitFor();
    await expect.poll(async () => page.locator('body').innerText()).not.toContain('Ferreira');
  });
});
