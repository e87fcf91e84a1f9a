/**
 * A screen that nobody enrolled, in the open session of a unit that shares its screens: whoever is signed in proves it again for
 * each group of steps (docs/decisions/0012; hazard 57, practice: "fast re-auth at each signature").
 */
import { randomUUID } from 'node:crypto';
import type { VisitView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { movableClock } from '../../../tests/support/movable-clock.ts';
import { lineNow, listToday, openToday, planToday, wilhelmina } from './support/at-the-chair.ts';
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

const patient = 'wilhelmina';
const clock = movableClock('2026-11-25T09:00');
let server: OwnServer;
const enrol = async (unit: string): Promise<string> =>
  cookieOf(
    await server.ask('/api/devices', {
      method: 'POST',
      as: 'administrator',
      body: { name: `tablet of ${unit}`, unit },
    }),
  );

beforeAll(async () => {
  server = await ownServer({ clock });
  await setUp(server);
  await planToday(server);
  await listToday(server, patient, 1, wilhelmina);
  await openToday(server);
});
afterAll(async () => server.close());

const passwordOf = (who: Somebody) => ({ username: people[who].username, password });
const refusedTo = async (
  who: Somebody,
  act: Record<string, unknown>,
  signedBy?: object,
  deviceAt?: string,
): Promise<string | undefined> => {
  const answer = await server.act(who, act, {
    ...(signedBy === undefined ? {} : { signedBy }),
    ...(deviceAt === undefined ? {} : { deviceAt }),
  });
  return answer.statusCode === 200 ? undefined : problemOf(answer).refusals?.[0]?.name;
};
const weighs = () =>
  lineNow(server, patient, 'weight', {
    quantity: { comparator: '', value: '64.0', unit: 'kg' },
    method: 'measured',
  });
const weights = async () =>
  (await server.atHand.notes.of('patient', patient)).all
    .filter(({ kind, at }) => kind === 'weight' && at?.startsWith('2026-11-25T') === true)
    .map(({ author }) => author.staff);
const staffOf = (who: Somebody): string => server.atHand.accounts.named(people[who].username)?.staff ?? '';

test('where no screen is shared, whoever is signed in signs', async () => {
  await server.done(
    'nurse',
    lineNow(server, patient, 'arrived', {
      session: 'thornbeck-2026-11-25',
      identifiers: ['full name', 'birth date'],
      chair: 2,
    }),
  );
});

describe('once the unit has enrolled one', () => {
  beforeAll(async () => {
    await enrol('thornbeck');
  });

  test('another asks who it is, says why, and writes nothing', async () => {
    const answer = await server.act('nurse', weighs());
    expect(answer.statusCode).toBe(403);
    expect(problemOf(answer).refusals).toEqual([
      {
        name: 'signature-needed',
        says: 'This unit shares its screens, and nobody enrolled this one: say who you are.',
        field: 'signedBy',
        remedy: 'sign with name and password, or ask an administrator to enrol this screen',
      },
    ]);
    expect(await weights()).toEqual([]);
  });
  test('a wrong password signs nothing', async () => {
    const wrong = { username: people.nurse.username, password: 'not it' };
    expect(await refusedTo('nurse', weighs(), wrong)).toBe('signature-not-proven');
    expect(await refusedTo('nurse', weighs())).toBe('signature-needed');
  });
  test('somebody else who passes by signs that one act; the next is not theirs', async () => {
    expect(await refusedTo('nurse', weighs(), passwordOf('checker'))).toBeUndefined();
    expect(await refusedTo('nurse', weighs())).toBe('signature-needed');
    expect(await weights()).toEqual([staffOf('checker')]);
  });
  test('their own password covers the group of steps, for the protocol’s minutes without an act', async () => {
    expect(await refusedTo('nurse', weighs(), passwordOf('nurse'))).toBeUndefined();
    clock.moveOn(9);
    expect(await refusedTo('nurse', weighs())).toBeUndefined();
    clock.moveOn(11);
    expect(await refusedTo('nurse', weighs())).toBe('signature-needed');
    expect(await weights()).toEqual([staffOf('checker'), staffOf('nurse'), staffOf('nurse')]);
  });
  test('what waited there without the network is signed by whoever wrote it and nobody else, each by itself', async () => {
    const before = await weights();
    const deviceAt = clock.now();
    expect(await refusedTo('nurse', weighs(), passwordOf('checker'), deviceAt)).toBe('signature-of-another');
    expect(await refusedTo('nurse', weighs(), undefined, deviceAt)).toBe('signature-needed');
    expect(await refusedTo('nurse', weighs(), passwordOf('nurse'), deviceAt)).toBeUndefined();
    expect(await refusedTo('nurse', weighs(), undefined, deviceAt)).toBe('signature-needed');
    expect(await weights()).toEqual([...before, staffOf('nurse')]);
  });
  test('it covers no other group, and no other session of the same person', async () => {
    expect(await refusedTo('nurse', weighs(), passwordOf('nurse'))).toBeUndefined();
    const flush = { milliliters: 10, ranFreely: true, calciumInLine: false, when: 'before' };
    expect(await refusedTo('nurse', lineNow(server, patient, 'flush', flush))).toBe('signature-needed');
    server.forget('nurse');
    expect(await refusedTo('nurse', weighs())).toBe('signature-needed');
  });
  test('a screen of another unit is none of ours', async () => {
    const cookie = await enrol('saltmere');
    const signedIn = await server.ask('/api/sign-in', { method: 'POST', body: passwordOf('nurse') });
    const answer = await server.ask('/api/acts', {
      method: 'POST',
      headers: { cookie: `${cookieOf(signedIn)}; ${cookie}` },
      body: { id: randomUUID(), act: weighs() },
    });
    expect(problemOf(answer).refusals?.[0]?.name).toBe('signature-needed');
  });
  test('the second check is signed with a proof of its own, also by the checker at her own screen', async () => {
    const check = {
      name: 'second check',
      patient,
      preparation: 'none',
      reading: {
        product: 'zoledronic acid 5 mg in 100 mL',
        batchLastFour: '2391',
        expiryMonth: '2028-04',
        minutes: 30,
        identifiers: ['full name', 'birth date'],
      },
    };
    expect(await refusedTo('checker', check)).toBe('signature-needed');
    expect(await refusedTo('checker', check, passwordOf('checker'))).toBe('no-such-entry');
    expect(await refusedTo('checker', check)).toBe('signature-needed');
  });
  test('what is no step of a visit is written by whoever is signed in, and the visit is read', async () => {
    expect(await refusedTo('nurse', lineNow(server, patient, 'allergy', { answer: 'none known' }))).toBeUndefined();
    expect((await server.read<VisitView>(`/api/people/${patient}/visit`)).steps[0]?.state).toBe('done');
  });
});
