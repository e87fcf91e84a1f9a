/**
 * A nurse from the bank has an account of their own, for the day (hazard 107; the unit's safety rules: "bank staff sign in for
 * today by the nurse in charge"). That two people vouch for it is ours: who makes an account alone could be both hands of a check.
 */
import { type Role, competenceOf, isInDate, day } from '@twelvemonth/clinical';
import type { SettingsView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Clock, systemClock } from '../src/clock.ts';
import { planToday } from './support/at-the-chair.ts';
import {
  type OwnServer,
  type Somebody,
  cookieOf,
  ownServer,
  password,
  people,
  problemOf,
  setUp,
} from './support/own-server.ts';

const zone = 'Europe/London';
const base = systemClock({ at: '2026-11-25T08:00:00', zone, clock: undefined });
let hoursOn = 0;
const at = (): Temporal.Instant => Temporal.Instant.from(base.now()).add({ hours: hoursOn });
const clock: Clock = {
  now: () => at().toString({ smallestUnit: 'millisecond' }),
  reading: base.reading,
  local: (inZone) => {
    const local = at().toZonedDateTimeISO(inZone);
    return {
      today: day(local.toPlainDate().toString()),
      moment: local.toString({ timeZoneName: 'never', smallestUnit: 'millisecond' }),
    };
  },
};

let server: OwnServer;
beforeAll(async () => {
  server = await ownServer({ clock });
  await setUp(server);
  await planToday(server);
});
afterAll(async () => server.close());

const witness = (who: Somebody, proof = password) => ({
  witnessUsername: people[who].username,
  witnessPassword: proof,
});
const bank = {
  name: 'Bea Bank',
  username: 'bea.bank',
  password: 'a word for one day',
  registration: '24B 0913E',
  unit: 'thornbeck',
  shown: ['medicines into a vein'],
  ownPassword: password,
  ...witness('checker'),
};
const add = async (more: object = {}, as: Somebody = 'nurse') =>
  server.ask('/api/staff/for-today', { method: 'POST', as, body: { ...bank, ...more } });
const refusedOn = async (more: object, as: Somebody = 'nurse') => {
  const [refused] = problemOf(await add(more, as)).refusals ?? [];
  return [refused?.name, refused?.field];
};
const signIn = async (secret = bank.password) =>
  server.ask('/api/sign-in', { method: 'POST', body: { username: bank.username, password: secret } });
const account = () => server.atHand.accounts.named(bank.username);
const unitNotes = async () => server.atHand.notes.of('unit', 'thornbeck');

describe('nobody makes one alone, and nobody for nobody', () => {
  test.each<[string, object, (string | undefined)[]]>([
    ['the nurse in charge vouches alone', witness('nurse'), ['second-person-needed', 'witnessUsername']],
    ['an assistant vouches', witness('assistant'), ['second-person-needed', 'witnessUsername']],
    ['a wrong password vouches', witness('checker', 'not hers'), ['signature-not-proven', 'witnessPassword']],
    [
      'somebody at a screen where the nurse in charge is signed in',
      { ownPassword: 'hers?' },
      ['signature-not-proven', 'ownPassword'],
    ],
    ['a username that somebody who works here has', { username: people.checker.username }, ['name-taken', 'username']],
  ])('%s', async (_, more, says) => {
    expect(await refusedOn(more)).toEqual(says);
    expect(account()).toBeUndefined();
  });
  test.each<[string, object]>([
    ['without a registration', { registration: '' }],
    ['without what they have shown', { shown: [] }],
  ])('%s', async (_, more) => {
    expect((await add(more)).statusCode).toBe(422);
    expect(account()).toBeUndefined();
  });
  test.each<Somebody>(['checker', 'lead', 'clerk', 'administrator'])('not by the %s', async (who) => {
    expect((await add(witness('nurse'), who)).statusCode).toBe(403);
  });
});

describe('for the day', () => {
  let cookie: string;
  test('they sign in as a nurse, with what they have shown in date for today and no longer', async () => {
    expect((await add()).statusCode).toBe(200);
    const answer = await signIn();
    cookie = cookieOf(answer);
    expect(answer.json<{ roles: Role[] }>().roles).toEqual(['nurse']);
    const staff = account()?.staff ?? '';
    const notes = await unitNotes();
    expect(competenceOf(notes, staff, 'medicines into a vein')).toMatchObject({ role: 'nurse', until: '2026-11-25' });
    expect(isInDate(notes, staff, 'life support', day('2026-11-25'))).toBe(false);
    expect(isInDate(notes, staff, 'medicines into a vein', day('2026-11-26'))).toBe(false);
  });
  test('the settings say until when, and with which registration; who vouched is kept', async () => {
    const { staff } = await server.read<SettingsView>('/api/settings', 'administrator');
    expect(staff.find(({ username }) => username === bank.username)?.forToday).toEqual({
      lastDay: '2026-11-25',
      registration: '24B 0913E',
    });
    const { accounts } = server.atHand;
    expect(account()?.forToday).toMatchObject({
      addedBy: accounts.named(people.nurse.username)?.staff,
      witness: accounts.named(people.checker.username)?.staff,
    });
  });
  test('they vouch for nobody else', async () => {
    const other = { username: 'otto.other', registration: '77X1', name: 'Otto Other' };
    const vouched = { witnessUsername: bank.username, witnessPassword: bank.password };
    expect(await refusedOn({ ...other, ...vouched })).toEqual(['second-person-needed', 'witnessUsername']);
  });
  test('one person has one account: the same registration, however it is written, is no second one', async () => {
    expect(await refusedOn({ username: 'bea.again', registration: '24b-0913e' })).toEqual([
      'name-taken',
      'registration',
    ]);
  });
  test('the day over, at the unit’s midnight, it is closed by itself: session, sign-in, and being named here', async () => {
    const me = async () => (await server.ask('/api/me', { headers: { cookie } })).statusCode;
    hoursOn = 15;
    expect([await me(), account()?.active]).toEqual([200, true]);
    hoursOn = 16;
    expect([await me(), account()?.active]).toEqual([401, false]);
    expect((await signIn()).statusCode).toBe(401);
    const named = await server.act('nurse', {
      name: 'record competence',
      unit: 'thornbeck',
      body: { staff: account()?.staff, role: 'nurse', what: 'life support', until: '2027-06-30' },
    });
    expect(problemOf(named).refusals?.[0]?.says).toBe('Bea Bank does not work here.');
  });
});

describe('on another day', () => {
  const tomorrow = { password: 'another word for it' };
  test('another person does not come in under their name', async () => {
    expect(await refusedOn({ ...tomorrow, registration: '99Z9999' })).toEqual(['name-taken', 'username']);
    expect(account()?.active).toBe(false);
  });
  test('they come back as who they were, for that day, and yesterday’s password is none', async () => {
    const before = account()?.staff;
    expect((await add(tomorrow)).statusCode).toBe(200);
    expect([account()?.staff, account()?.active, account()?.forToday?.lastDay]).toEqual([before, true, '2026-11-26']);
    expect((await signIn()).statusCode).toBe(401);
    expect((await signIn(tomorrow.password)).statusCode).toBe(200);
  });
  test('whom an administrator closed nobody at the chair opens again', async () => {
    const body = { staff: account()?.staff, active: false };
    await server.ask('/api/staff/change', { method: 'POST', as: 'administrator', body });
    expect(await refusedOn(tomorrow)).toEqual(['not-yours-to-do', 'username']);
    expect(account()?.active).toBe(false);
  });
});
