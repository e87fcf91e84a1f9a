import type { MeView, SettingsView, StaffView, StatusView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildApp } from '../src/app.ts';
import { openAccounts } from '../src/sign-in/accounts.ts';
import { type OwnServer, cookieOf, ownServer, password, people, problemOf } from './support/own-server.ts';

describe('signing in', () => {
  let server: OwnServer;
  beforeAll(async () => {
    server = await ownServer();
  });
  afterAll(async () => server.close());
  const signIn = async (username: string, secret: string) =>
    server.ask('/api/sign-in', { method: 'POST', body: { username, password: secret } });

  test('gives a cookie that scripts cannot read and other sites do not send (ASVS 3.3.2, 3.3.4)', async () => {
    const answer = await signIn('nora.nurse', password);
    expect(answer.statusCode).toBe(200);
    const set = String(answer.headers['set-cookie']);
    expect(set).toMatch(/HttpOnly/);
    expect(set).toMatch(/SameSite=Lax/);
    expect(set).toMatch(/Max-Age=43200/);
    const me = await server.ask('/api/me', { headers: { cookie: cookieOf(answer) } });
    expect(me.json<MeView>()).toMatchObject({ name: people.nurse.name, roles: ['nurse in charge', 'nurse'] });
    expect(me.json<MeView>().may).toEqual(expect.arrayContaining(['decide', 'people']));
    expect(me.json<MeView>().may).not.toContain('addStaff');
  });

  test('a new sign-in is a new session; signing out ends it', async () => {
    const first = cookieOf(await signIn('clara.clerk', password));
    const second = cookieOf(await signIn('clara.clerk', password));
    expect(second).not.toBe(first);
    await server.ask('/api/sign-out', { method: 'POST', headers: { cookie: first } });
    expect((await server.ask('/api/me', { headers: { cookie: first } })).statusCode).toBe(401);
    expect((await server.ask('/api/me', { headers: { cookie: second } })).statusCode).toBe(200);
  });

  test('does not tell a wrong name from a wrong password', async () => {
    const name = await signIn('no.body', password);
    const secret = await signIn('petra.press', 'wrong');
    expect([name.statusCode, secret.statusCode]).toEqual([401, 401]);
    expect(problemOf(name)).toEqual(problemOf(secret));
  });

  test('the sixth wrong try within a minute waits, also if all come at once, and others are not held up (ASVS 6.3.1)', async () => {
    const answers = await Promise.all(Array.from({ length: 8 }, async () => signIn('phil.farm', 'wrong')));
    expect(answers.filter(({ statusCode }) => statusCode === 401)).toHaveLength(5);
    const waiting = answers.filter(({ statusCode }) => statusCode === 429);
    expect(waiting).toHaveLength(3);
    expect(Number(waiting[0]?.headers['retry-after'])).toBeGreaterThan(0);
    expect((await signIn('phil.farm', password)).statusCode).toBe(429);
    expect((await signIn('asa.assist', password)).statusCode).toBe(200);
  });

  test('right passwords do not count as tries', async () => {
    for (let time = 0; time < 8; time += 1) expect((await signIn('lena.lead', password)).statusCode).toBe(200);
  });

  test('a person who is disabled is out at once, and what they signed stays theirs (ASVS 7.4.2)', async () => {
    const { staff } = (await server.read<SettingsView>('/api/settings', 'administrator')).staff.find(
      ({ username }) => username === 'chris.check',
    ) ?? { staff: '' };
    const cookie = cookieOf(await signIn('chris.check', password));
    expect((await server.ask('/api/me', { headers: { cookie } })).statusCode).toBe(200);
    await server.ask('/api/staff/change', { method: 'POST', as: 'administrator', body: { staff, active: false } });
    expect((await server.ask('/api/me', { headers: { cookie } })).statusCode).toBe(401);
    expect((await signIn('chris.check', password)).statusCode).toBe(401);
    await server.ask('/api/staff/change', { method: 'POST', as: 'administrator', body: { staff, active: true } });
    expect((await server.ask('/api/me', { headers: { cookie } })).statusCode).toBe(401);
    expect((await signIn('chris.check', password)).statusCode).toBe(200);
  });

  test('a new password ends the old sessions', async () => {
    const { staff } = (await server.read<SettingsView>('/api/settings', 'administrator')).staff.find(
      ({ username }) => username === 'aude.audit',
    ) ?? { staff: '' };
    const cookie = cookieOf(await signIn('aude.audit', password));
    await server.ask('/api/staff/change', {
      method: 'POST',
      as: 'administrator',
      body: { staff, password: 'another long password' },
    });
    expect((await server.ask('/api/me', { headers: { cookie } })).statusCode).toBe(401);
    expect((await signIn('aude.audit', 'another long password')).statusCode).toBe(200);
  });

  test('an administrator adds people and cannot lock themselves out', async () => {
    const added = await server.ask('/api/staff', {
      method: 'POST',
      as: 'administrator',
      body: { name: 'Bo New', username: 'bo.new', password: 'twelve signs or more', roles: ['nurse'] },
    });
    expect(added.json<StaffView>()).toMatchObject({ name: 'Bo New', roles: ['nurse'], active: true });
    expect((await signIn('bo.new', 'twelve signs or more')).statusCode).toBe(200);
    const twice = await server.ask('/api/staff', {
      method: 'POST',
      as: 'administrator',
      body: { name: 'Bo Else', username: 'bo.new', password: 'twelve signs or more', roles: ['nurse'] },
    });
    expect(twice.statusCode).toBe(409);
    const short = await server.ask('/api/staff', {
      method: 'POST',
      as: 'administrator',
      body: { name: 'Bo', username: 'bo.short', password: 'short', roles: ['king'] },
    });
    expect(problemOf(short).refusals?.map(({ field }) => field)).toContain('password');
    const { staff } = (await server.read<SettingsView>('/api/settings', 'administrator')).staff.find(
      ({ username }) => username === 'ada.admin',
    ) ?? { staff: '' };
    const self = await server.ask('/api/staff/change', {
      method: 'POST',
      as: 'administrator',
      body: { staff, active: false },
    });
    expect(self.statusCode).toBe(422);
  });
});

describe('a service that nobody has set up', () => {
  let server: OwnServer;
  beforeAll(async () => {
    server = await ownServer({ staff: false });
  });
  afterAll(async () => server.close());
  const first = {
    name: 'First Person',
    username: 'first.person',
    password: 'twelve signs or more',
    service: 'Thornbeck infusions',
    starter: 'starter-us',
  };

  test('is set up once, from its own machine, and by one of two who try at once', async () => {
    expect((await server.ask('/api/status')).json<StatusView>().needsFirstAdministrator).toBe(true);
    const afar = await server.app.inject({
      method: 'POST',
      url: '/api/first-administrator',
      payload: first,
      remoteAddress: '192.0.2.7',
    });
    expect(afar.statusCode).toBe(403);
    const unheardOf = { ...first, starter: 'starter-moon' };
    expect((await server.ask('/api/first-administrator', { method: 'POST', body: unheardOf })).statusCode).toBe(422);
    const both = await Promise.all(
      [0, 1].map(async (n) =>
        server.ask('/api/first-administrator', { method: 'POST', body: { ...first, username: `first.person${n}` } }),
      ),
    );
    expect(both.map(({ statusCode }) => statusCode).toSorted((a, b) => a - b)).toEqual([200, 403]);
    const cookie = cookieOf(both.find(({ statusCode }) => statusCode === 200) ?? both[0]!);
    expect((await server.ask('/api/me', { headers: { cookie } })).json<MeView>().roles).toEqual(['administrator']);
    const status = (await server.ask('/api/status')).json<StatusView>();
    expect(status).toMatchObject({ needsFirstAdministrator: false, service: 'Thornbeck infusions', demo: false });
    expect(await server.atHand.store.setting('starter')).toBe('starter-us');
    const settings = await server.ask('/api/settings', { headers: { cookie } });
    expect(settings.json<SettingsView>().setUp.find(({ done }) => !done)?.how).toBeTruthy();
  });
});

describe('behind TLS', () => {
  test('the cookie is bound to this host and to HTTPS, and browsers are told to stay with HTTPS (ASVS 3.3.1, 3.3.3, 3.4.1)', async () => {
    const server = await ownServer();
    const accounts = await openAccounts(server.atHand.store, { https: true, now: server.atHand.clock.now });
    const address = {
      tls: undefined,
      behindProxy: true,
      onlyThisMachine: false,
      screens: server.folder,
      log: { level: 'warn', stream: { write: () => undefined } },
    } as const;
    const app = await buildApp({ ...server.atHand, accounts }, address);
    const headers = { host: 'thornbeck.example', 'x-forwarded-for': '192.0.2.9', 'x-forwarded-proto': 'https' };
    const payload = { username: 'nora.nurse', password };
    const answer = await app.inject({ method: 'POST', url: '/api/sign-in', headers, payload });
    expect(String(answer.headers['set-cookie'])).toMatch(/^__Host-twelvemonth=[^;]+;.*Path=\/;.*Secure/);
    expect(String(answer.headers['set-cookie'])).not.toMatch(/Domain/i);
    expect(answer.headers['strict-transport-security']).toContain('max-age=31536000');
    const me = await app.inject({ url: '/api/me', headers: { ...headers, cookie: cookieOf(answer) } });
    expect(me.statusCode).toBe(200);
    // Tries are counted by the address the proxy speaks for, not by the proxy's own.
    const wrong = async (from: string) =>
      app.inject({
        method: 'POST',
        url: '/api/sign-in',
        headers: { ...headers, 'x-forwarded-for': from },
        payload: { ...payload, password: 'no' },
      });
    for (let time = 0; time < 5; time += 1) await wrong('192.0.2.10');
    expect((await wrong('192.0.2.10')).statusCode).toBe(429);
    expect((await wrong('192.0.2.11')).statusCode).toBe(401);
    await app.close();
    await server.close();
  });
});
