import { randomUUID } from 'node:crypto';
import { setTimeout as wait } from 'node:timers/promises';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  type OwnServer,
  cookieOf,
  ownServer,
  password,
  people,
  problemOf,
  referralOf,
  setUp,
} from './support/own-server.ts';

let server: OwnServer;
beforeAll(async () => {
  server = await ownServer();
  await setUp(server);
  await server.done('clerk', referralOf('p1'));
});
afterAll(async () => server.close());

describe('trouble on the wire (RFC 9457)', () => {
  const cases: readonly {
    readonly what: string;
    readonly status: number;
    readonly ask: () => ReturnType<OwnServer['ask']>;
  }[] = [
    { what: 'an unknown person', status: 404, ask: () => server.ask('/api/people/nobody', { as: 'nurse' }) },
    { what: 'an unknown address', status: 404, ask: () => server.ask('/api/nothing', { as: 'nurse' }) },
    { what: 'an id that is none', status: 422, ask: () => server.ask('/api/people/..%2F..%2Fetc', { as: 'nurse' }) },
    {
      what: 'a date that does not exist',
      status: 422,
      ask: () => server.ask('/api/people/p1/readiness?on=2026-02-30', { as: 'nurse' }),
    },
    {
      what: 'text that is not JSON',
      status: 400,
      ask: async () =>
        server.ask('/api/acts', {
          method: 'POST',
          as: 'nurse',
          body: '{',
          headers: { 'content-type': 'application/json' },
        }),
    },
    {
      what: 'a form of another page',
      status: 415,
      ask: async () =>
        server.ask('/api/acts', {
          method: 'POST',
          as: 'nurse',
          body: 'act=1',
          headers: { 'content-type': 'application/x-www-form-urlencoded' },
        }),
    },
    {
      what: 'plain text',
      status: 415,
      ask: async () =>
        server.ask('/api/acts', { method: 'POST', as: 'nurse', body: '{}', headers: { 'content-type': 'text/plain' } }),
    },
    {
      what: 'a form that is too large',
      status: 413,
      ask: async () => server.ask('/api/acts', { method: 'POST', as: 'nurse', body: { id: 'x'.repeat(1_100_000) } }),
    },
    { what: 'a person who is not signed in', status: 401, ask: () => server.ask('/api/people') },
    { what: 'a role that may not', status: 403, ask: () => server.ask('/api/people', { as: 'administrator' }) },
  ];
  for (const { what, status, ask } of cases) {
    test(`${what} is a problem of status ${status}`, async () => {
      const answer = await ask();
      expect(answer.statusCode).toBe(status);
      const problem = problemOf(answer);
      expect(problem.status).toBe(status);
      expect(problem.title).toBeTruthy();
      expect(answer.headers['cache-control']).toBe('no-store');
    });
  }

  test('a defect gives a number to quote and nothing of the inside', async () => {
    const broken = await ownServer();
    const { people: everyone } = broken.atHand;
    Object.assign(everyone, { all: () => Promise.reject(new Error('secret inside: select * from entry')) });
    const answer = await broken.ask('/api/people', { as: 'nurse' });
    expect(answer.statusCode).toBe(500);
    expect(problemOf(answer).instance).toMatch(/^[0-9a-f-]{36}$/);
    expect(answer.body).not.toContain('secret');
    await broken.close();
  });
});

describe('other sites', () => {
  const act = (headers: Record<string, string>) =>
    server.ask('/api/acts', { method: 'POST', as: 'nurse', body: { id: randomUUID(), act: {} }, headers });
  test('cannot make a signed-in browser change anything (ASVS 3.5.1, 3.5.3)', async () => {
    for (const headers of [
      { 'sec-fetch-site': 'cross-site' },
      { 'sec-fetch-site': 'same-site' },
      { 'sec-fetch-site': 'none' },
      { origin: 'https://elsewhere.example' },
      { origin: 'null' },
    ]) {
      const answer = await act(headers);
      expect({ headers, status: answer.statusCode, type: problemOf(answer).type }).toEqual({
        headers,
        status: 403,
        type: '/problems/other-site',
      });
    }
    expect((await act({ 'sec-fetch-site': 'same-origin' })).statusCode).toBe(422);
    expect((await act({ origin: 'http://localhost:4310', host: 'localhost:4310' })).statusCode).toBe(422);
  });

  test('cannot borrow this machine by a name of their own', async () => {
    const answer = await server.ask('/api/status', { headers: { host: 'rebound.example:4310' } });
    expect(answer.statusCode).toBe(421);
    for (const host of ['localhost:4310', '127.0.0.1:4310', '[::1]:4310'])
      expect([host, (await server.ask('/api/status', { headers: { host } })).statusCode]).toEqual([host, 200]);
  });

  test('pages may load nothing from elsewhere, and plain HTTP on this machine is not pushed to HTTPS (ASVS 3.4.3, 3.4.4, 3.4.6)', async () => {
    const { headers } = await server.ask('/api/status');
    const policy = String(headers['content-security-policy']);
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self'");
    expect(policy).not.toMatch(/unsafe-eval|script-src[^;]*unsafe-inline|upgrade-insecure-requests/);
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['referrer-policy']).toBe('no-referrer');
    expect(headers['strict-transport-security']).toBeUndefined();
    const letter = await server.ask('/api/people/p1/notes', { as: 'nurse' });
    expect(letter.headers['content-security-policy']).toContain("default-src 'none'; style-src 'unsafe-inline'");
  });
});

test('an answer holds what the contract names and nothing else (ASVS 15.3.1)', async () => {
  const members = (await server.ask('/api/settings', { as: 'administrator' })).json<{ staff: object[] }>().staff;
  for (const member of members)
    expect(Object.keys(member).toSorted()).toEqual(['active', 'name', 'roles', 'staff', 'username']);
});

test('the interface describes itself', async () => {
  const answer = await server.ask('/api/openapi.json');
  const described = answer.json<{
    openapi: string;
    paths: Record<string, Record<string, { requestBody?: unknown; responses: object }>>;
  }>();
  expect(described.openapi).toMatch(/^3\.1/);
  expect(Object.keys(described.paths)).toEqual(
    expect.arrayContaining(['/api/acts', '/api/people/{patient}', '/api/import/accept']),
  );
  expect(described.paths['/api/acts']?.['post']?.requestBody).toBeDefined();
});

describe('search', () => {
  const found = async (text: string): Promise<string[]> =>
    (await server.ask('/api/search', { method: 'POST', as: 'clerk', body: { text } }))
      .json<{ found: { patient: string }[] }>()
      .found.map(({ patient }) => patient);
  test('finds by name, part of a double name, number and birth date, with or without marks', async () => {
    for (const text of [
      'arkwright',
      'Poe',
      'wilhel ark',
      'Wílhelmina',
      '204 7713',
      '9992047713',
      '2.6.1941',
      '1941-06-02',
      '1941',
    ])
      expect([text, ...(await found(text))]).toEqual([text, 'p1']);
    for (const text of ['zzz', '3.6.1941', '12']) expect([text, ...(await found(text))]).toEqual([text]);
  });
});

describe('live updates', () => {
  test('tell which notes moved on, and end with the session', async () => {
    await server.app.listen({ host: '127.0.0.1', port: 0 });
    const { port } = server.app.server.address() as AddressInfo;
    const base = `http://127.0.0.1:${port}`;
    const signedIn = await server.ask('/api/sign-in', {
      method: 'POST',
      body: { username: people.assistant.username, password },
    });
    const cookie = cookieOf(signedIn);
    const stream = await fetch(`${base}/api/events`, { headers: { cookie, accept: 'text/event-stream' } });
    expect(stream.status).toBe(200);
    expect(stream.headers.get('content-type')).toContain('text/event-stream');
    const reader = stream.body?.pipeThrough(new TextDecoderStream()).getReader();
    let heard = '';
    let ended = false;
    const listening = (async () => {
      for (;;) {
        const part = await reader?.read();
        if (part === undefined || part.done) break;
        heard += part.value;
      }
      ended = true;
    })();
    const until = async (holds: () => boolean): Promise<void> => {
      for (let time = 0; time < 200 && !holds(); time += 1) await wait(25);
    };
    await until(() => heard.includes('hello'));
    const { commit } = await server.done('clerk', {
      name: 'record',
      patient: 'p1',
      line: { kind: 'call', body: { route: 'telephone', about: 'place', reached: true }, effectiveAt: '2026-11-25' },
    });
    await until(() => heard.includes('event: commit'));
    expect(heard).toContain('event: commit');
    const data = /event: commit\ndata: (.*)\n/.exec(heard)?.[1] ?? heard;
    expect(JSON.parse(data)).toEqual({ commit, subjects: [{ subject: 'patient/p1', seq: expect.any(Number) }] });
    expect(heard).not.toContain('Arkwright');
    await fetch(`${base}/api/sign-out`, { method: 'POST', headers: { cookie } });
    await until(() => ended);
    expect(ended).toBe(true);
    await listening;
  });

  test('wait for a browser that is slow to read, and then tell it everything in order', async () => {
    const { port } = server.app.server.address() as AddressInfo;
    const warned: string[] = [];
    const note = ({ name }: Error): void => void warned.push(name);
    process.on('warning', note);
    const stream = await fetch(`http://127.0.0.1:${port}/api/events`, {
      headers: {
        cookie: cookieOf(
          await server.ask('/api/sign-in', { method: 'POST', body: { username: people.nurse.username, password } }),
        ),
        accept: 'text/event-stream',
      },
    });
    const subjects = Array.from({ length: 2000 }, (_, index) => ({ subject: `patient/p${index}` as const, seq: 1 }));
    for (let commit = 1; commit <= 60; commit += 1) server.atHand.events.tell({ commit, subjects });
    const reader = stream.body?.pipeThrough(new TextDecoderStream()).getReader();
    let heard = '';
    while (!heard.includes('"commit":60,')) heard += (await reader?.read())?.value ?? '';
    await reader?.cancel();
    process.off('warning', note);
    expect([...heard.matchAll(/^data: \{"commit":(\d+),/gm)].map(([, commit]) => Number(commit))).toEqual(
      Array.from({ length: 60 }, (_, index) => index + 1),
    );
    expect(warned).toEqual([]);
  });

  test('are for those who are signed in', async () => {
    expect((await server.ask('/api/events', { headers: { accept: 'text/event-stream' } })).statusCode).toBe(401);
  });
});

test('the log names routes and never a person, an id or a number (ASVS 14.2.1, 16.2.5)', async () => {
  const lines: string[] = [];
  const logged = await ownServer({ log: { level: 'info', stream: { write: (line) => void lines.push(line) } } });
  await setUp(logged);
  await logged.done('clerk', referralOf('patient-4711'));
  for (const path of ['', '/visit', '/notes', '/readiness', '/nothing'])
    await logged.ask(`/api/people/patient-4711${path}`, { as: 'nurse' });
  await logged.ask('/api/search', { method: 'POST', as: 'clerk', body: { text: 'Arkwright' } });
  await logged.ask('/api/sign-in', { method: 'POST', body: { username: 'nora.nurse', password: 'hunter2 hunter2' } });
  await logged.close();
  const log = lines.join('');
  expect(log).toContain('/api/people/:patient/visit');
  expect(log).toContain('sign-in refused');
  for (const secret of ['4711', 'Arkwright', '204 7713', 'hunter2', password, 'twelvemonth='])
    expect(log.includes(secret) && secret).toBe(false);
});

test('a store that can only be read says so, and is still read', async () => {
  const lines: string[] = [];
  const reading = await ownServer({ log: { level: 'warn', stream: { write: (line) => void lines.push(line) } } });
  await setUp(reading);
  await reading.done('clerk', referralOf('p1'));
  const says = 'The disk refused to sync: nothing is written until the server is started again.';
  const { store, accounts } = reading.atHand;
  Object.defineProperty(store, 'readOnly', { value: { says } });
  Object.assign(store, { act: async () => ({ outcome: 'read-only', says }) });
  // Nor can it be written down who looked: the notes are shown all the same, and the log says so.
  Object.assign(accounts.looks, { create: async () => Promise.reject(new Error('disk')) });
  const answer = await reading.act('clerk', {
    name: 'record',
    patient: 'p1',
    line: { kind: 'call', body: { route: 'telephone', about: 'place', reached: true }, effectiveAt: '2026-11-25' },
  });
  expect(answer.statusCode).toBe(503);
  expect(problemOf(answer).detail).toBe(says);
  expect((await reading.ask('/api/status')).json<{ readOnly: string }>().readOnly).toBe(says);
  expect((await reading.ask('/api/people/p1', { as: 'nurse' })).statusCode).toBe(200);
  expect(lines.join('')).toContain('a look could not be written down');
  await reading.close();
});
