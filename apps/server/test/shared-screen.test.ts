/**
 * Signing at a shared screen: by PIN or badge, on an enrolled device, in the open session, for a step of a visit; five tries;
 * one signature for a group of steps; the second check always alone (design: "The interface"). That failed tries are limited:
 * NIST SP 800-63B (from memory); five is ours.
 */
import { randomUUID } from 'node:crypto';
import type { SettingsView, VisitView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openQuickSecrets } from '../src/sign-in/quick-secrets.ts';
import {
  lineNow,
  listToday,
  openToday,
  planToday,
  readyToPrepare,
  startInfusion,
  wilhelmina,
  packRead,
} from './support/at-the-chair.ts';
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
const pins = { nurse: '271828', checker: '314159' } as const;
const badge = 'TB-7f3a-99c1-0042';
let server: OwnServer;
let device: string;
let nurseAtScreen: string;
const staffOf = (who: Somebody): string => server.atHand.accounts.named(people[who].username)?.staff ?? '';
const setMine = async (who: Somebody, secret: object, mine = password) =>
  server.ask('/api/my-signature', { method: 'POST', as: who, body: { password: mine, ...secret } });

beforeAll(async () => {
  server = await ownServer();
  await setUp(server);
  await planToday(server);
  await listToday(server, patient, 1, wilhelmina);
  for (const who of ['nurse', 'checker'] as const) await setMine(who, { pin: pins[who] });
  await setMine('checker', { badge });
  const enrolled = await server.ask('/api/devices', {
    method: 'POST',
    as: 'administrator',
    body: { name: 'tablet at chair 2', unit: 'thornbeck' },
  });
  expect(String(enrolled.headers['set-cookie'])).toMatch(/HttpOnly; SameSite=Lax/);
  device = cookieOf(enrolled);
  nurseAtScreen = cookieOf(
    await server.ask('/api/sign-in', { method: 'POST', body: { username: people.nurse.username, password } }),
  );
});
afterAll(async () => server.close());

/** An act at a screen at which the nurse is signed in: the shared one, or another. */
const atScreen = async (act: object, signedBy?: object, cookie = device, more: { readonly deviceAt?: string } = {}) =>
  server.ask('/api/acts', {
    method: 'POST',
    headers: { cookie: `${nurseAtScreen}; ${cookie}` },
    body: { id: randomUUID(), act, ...(signedBy === undefined ? {} : { signedBy }), ...more },
  });
const refusedAs = async (...asked: Parameters<typeof atScreen>): Promise<string | undefined> =>
  problemOf(await atScreen(...asked)).refusals?.[0]?.name;
const pinOf = (who: keyof typeof pins, pin: string = pins[who]) => ({ staff: staffOf(who), pin });

const arrives = () =>
  lineNow(server, patient, 'arrived', {
    session: 'thornbeck-2026-11-25',
    identifiers: ['full name', 'birth date'],
    chair: 2,
  });
const weighs = () =>
  lineNow(server, patient, 'weight', {
    quantity: { comparator: '', value: '64.0', unit: 'kg' },
    method: 'measured',
  });
/** Who wrote the newest entry of a kind. */
const authorOf = async (kind: string): Promise<string | undefined> => {
  const record = await server.atHand.notes.of('patient', patient);
  const newest = record.all.filter((entry) => entry.kind === kind).toSorted((a, b) => b.seq - a.seq)[0];
  return newest?.author.staff;
};
const idOf = async (kind: string): Promise<string> => {
  const record = await server.atHand.notes.of('patient', patient);
  return record.all.find((entry) => entry.kind === kind)?.id ?? '';
};

describe('setting it', () => {
  test('asks for the password', async () => {
    expect((await setMine('nurse', { pin: '161803' }, 'wrong')).statusCode).toBe(422);
  });
  test.each(['111111', '123456', '987654'])('%s is guessed first, and not taken', async (pin) => {
    expect(problemOf(await setMine('nurse', { pin })).refusals?.[0]?.field).toBe('pin');
  });
  test.each(['12345', 'abcdef', '12345678901'])('%s is no PIN', async (pin) => {
    expect((await setMine('nurse', { pin })).statusCode).toBe(422);
  });
  test('a badge belongs to one person', async () => {
    expect(problemOf(await setMine('nurse', { badge })).refusals?.[0]?.field).toBe('badge');
  });
  test('neither PIN, badge nor the cookie of a screen is kept readable', async () => {
    const { tables } = server.atHand.accounts;
    const kept = JSON.stringify([
      await tables.findMany({ model: 'quickSecret', limit: 100 }),
      await tables.findMany({ model: 'sharedDevice', limit: 100 }),
    ]);
    for (const secret of [pins.nurse, pins.checker, badge, device.split('=')[1] ?? 'none'])
      expect(kept).not.toContain(secret);
    expect(kept).toContain('$argon2id$');
  });
  test('only an administrator enrols a screen', async () => {
    const body = { name: 'mine', unit: 'thornbeck' };
    expect((await server.ask('/api/devices', { method: 'POST', as: 'nurse', body })).statusCode).toBe(403);
  });
});

test('before the session is open no PIN signs', async () => {
  expect(await refusedAs(arrives(), pinOf('checker'))).toBe('session-not-open');
});

describe('in the open session', () => {
  beforeAll(async () => openToday(server));

  test('a screen that is not enrolled takes no PIN, whoever types it', async () => {
    for (const cookie of ['', 'twelvemonth-device=made-up'])
      expect(await refusedAs(arrives(), pinOf('nurse'), cookie)).toBe('device-not-enrolled');
  });
  test('an enrolled one asks who it is, though somebody is signed in', async () => {
    expect(await refusedAs(arrives())).toBe('signature-needed');
    expect(await authorOf('arrived')).toBeUndefined();
  });
  test("another person's PIN proves nothing", async () => {
    expect(await refusedAs(arrives(), pinOf('nurse', pins.checker))).toBe('signature-not-proven');
  });
  test('somebody who is not named in the opening does not sign', async () => {
    await setMine('prescriber', { pin: '141421' });
    const signed = { staff: staffOf('prescriber'), pin: '141421' };
    expect(await refusedAs(arrives(), signed)).toBe('signature-not-proven');
  });
  test('one signature covers the steps to the go; its signer is the author, not whoever is signed in', async () => {
    expect((await atScreen(arrives(), pinOf('checker'))).statusCode).toBe(200);
    expect((await atScreen(weighs())).statusCode).toBe(200);
    expect(await authorOf('arrived')).toBe(staffOf('checker'));
    expect(await authorOf('weight')).toBe(staffOf('checker'));
  });
  test('a step written without a network is signed by itself: who has signed since need not be who wrote it', async () => {
    const waited = { deviceAt: '2026-11-25T08:41:00.000Z' };
    expect(await refusedAs(weighs(), undefined, device, waited)).toBe('signature-needed');
    expect((await atScreen(weighs(), pinOf('nurse'), device, waited)).statusCode).toBe(200);
    expect(await authorOf('weight')).toBe(staffOf('nurse'));
  });
  test('the next group of steps asks anew', async () => {
    const cannula = { site: 'left forearm', gauge: '22', tries: 1, placed: true };
    expect(await refusedAs(lineNow(server, patient, 'cannula', cannula))).toBe('signature-needed');
  });
  describe('lines sent together are of one group of steps, or each is signed by itself', () => {
    type OneLine = { readonly line: object };
    const together = (...acts: readonly object[]) => ({
      name: 'record together',
      patient,
      lines: acts.map((act) => (act as OneLine).line),
    });
    const cannula = () =>
      lineNow(server, patient, 'cannula', { site: 'left forearm', gauge: '22', tries: 1, placed: true });
    const removed = () => lineNow(server, patient, 'cannula-removed', { site: 'looks well' });
    const allergy = () => lineNow(server, patient, 'allergy', { answer: 'none known' });
    const left = () => lineNow(server, patient, 'left', { cardGiven: true });

    test.each<[string, () => object]>([
      ['a later step behind a weight', () => together(weighs(), left())],
      ['a cannula behind a weight', () => together(weighs(), cannula())],
      ['what is no step behind a weight', () => together(weighs(), allergy())],
      ['a weight behind what is no step', () => together(allergy(), weighs())],
    ])('%s', async (_, act) => {
      expect((await atScreen(weighs(), pinOf('checker'))).statusCode).toBe(200);
      const before = (await server.atHand.notes.of('patient', patient)).lastSeq;
      const byPassword = { username: people.nurse.username, password };
      for (const signedBy of [undefined, pinOf('nurse'), byPassword])
        expect(await refusedAs(act(), signedBy)).toBe('signature-for-each-step');
      expect((await server.atHand.notes.of('patient', patient)).lastSeq).toBe(before);
    });
    test('a cannula taken out and placed again is one step: only that group is asked for', async () => {
      expect(await refusedAs(together(removed(), cannula()))).toBe('signature-needed');
    });
    test('two weights are covered by the signature of their group', async () => {
      expect((await atScreen(together(weighs(), weighs()))).statusCode).toBe(200);
      expect(await authorOf('weight')).toBe(staffOf('checker'));
    });
  });
  test('what is no step of a visit is not signed by PIN', async () => {
    const allergy = lineNow(server, patient, 'allergy', { answer: 'none known' });
    expect(await refusedAs(allergy, pinOf('nurse'))).toBe('not-by-pin');
  });

  test('the second check is signed alone: no standing signature covers it, the preparer never, a badge does', async () => {
    await server.done('nurse', {
      name: 'withdraw',
      patient,
      entry: await idOf('arrived'),
      reason: 'the day begins anew',
    });
    await readyToPrepare(server, patient, 1, { signedBy: { username: people.nurse.username, password } });
    const prepared = lineNow(server, patient, 'preparation', packRead);
    expect((await atScreen(prepared, pinOf('nurse'))).statusCode).toBe(200);
    const { preparation } = await server.read<VisitView>(`/api/people/${patient}/visit`);
    const check = {
      name: 'second check',
      patient,
      preparation: preparation?.entry,
      reading: {
        product: 'zoledronic acid 5 mg in 100 mL',
        batchLastFour: '2391',
        expiryMonth: '2028-04',
        minutes: 30,
        identifiers: ['full name', 'birth date'],
      },
    };
    expect(await refusedAs(check)).toBe('signature-needed');
    expect(await refusedAs(check, pinOf('nurse'))).toBe('checker-is-preparer');
    expect((await atScreen(check, { badge })).statusCode).toBe(200);
    expect(await authorOf('second-check')).toBe(staffOf('checker'));
  });

  test('after five wrong PINs the right one is refused too, also many at once, until it is set anew', async () => {
    const start = startInfusion(patient);
    const wrong = await Promise.all(
      Array.from({ length: 8 }, async () => refusedAs(start, pinOf('checker', '999998'))),
    );
    expect(wrong.filter((name) => name === 'signature-not-proven')).toHaveLength(5);
    expect(wrong.filter((name) => name === 'pin-locked')).toHaveLength(3);
    expect(await refusedAs(start, pinOf('checker'))).toBe('pin-locked');
    expect((await atScreen(start, pinOf('nurse'))).statusCode).toBe(200);
    // Another process, or this one started anew: the count stands with the PIN.
    const anew = openQuickSecrets(server.atHand.accounts.tables, server.atHand.accounts.secret);
    expect(await anew.tryPin(staffOf('checker'), pins.checker)).toBe('locked');
    await setMine('checker', { pin: '577215' });
    const pause = { name: 'pause infusion', patient, reason: 'to the toilet' };
    expect((await atScreen(pause, pinOf('checker', '577215'))).statusCode).toBe(200);
  });

  test('two processes share one count: eight tries at once between them are five', async () => {
    await setMine('checker', { pin: '662607' });
    const two = [0, 1].map(() => openQuickSecrets(server.atHand.accounts.tables, server.atHand.accounts.secret));
    const tries = await Promise.all(
      Array.from({ length: 8 }, async (_, turn) => two[turn % 2]?.tryPin(staffOf('checker'), '999997')),
    );
    expect(tries.filter((came) => came === 'wrong')).toHaveLength(5);
    expect(tries.filter((came) => came === 'locked')).toHaveLength(3);
    await setMine('checker', { pin: '577215' });
  });

  test('every refused try stands in the settings: where, whose, how, and why', async () => {
    const { signaturesRefused } = await server.read<SettingsView>('/api/settings', 'administrator');
    expect(signaturesRefused).toContainEqual(
      expect.objectContaining({
        device: 'tablet at chair 2',
        staff: people.checker.name,
        how: 'PIN',
        outcome: 'pin-locked',
      }),
    );
  });

  test('a screen that was withdrawn, the only one, is a screen like any other', async () => {
    const { devices } = await server.read<SettingsView>('/api/settings', 'administrator');
    const body = { device: devices[0]?.device };
    await server.ask('/api/devices/withdraw', { method: 'POST', as: 'administrator', body });
    const resume = { name: 'resume infusion', patient, alongTheLine: 'vented set, no air, clamp shut' };
    expect(await refusedAs(resume, pinOf('nurse'))).toBe('device-not-enrolled');
    expect((await atScreen(resume)).statusCode).toBe(200);
  });
});
