/** A text gateway's later word as a call: our own documented contract, spoken by a recorded gateway (no standard for it is known). */
import { mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { readCommandLine } from '../src/command-line.ts';
import { gatewayWordListener } from '../src/messages/gateway-word.ts';

const folder = mkdtempSync(join(tmpdir(), 'twelvemonth-word-'));
const key = 'a key of thirty-two signs or more';
const app = gatewayWordListener({ folder, key });
afterAll(async () => {
  await app.close();
  rmSync(folder, { recursive: true, force: true });
});

const says = { id: '3c08ca18-fed5-8d77-837a-574b7d0a5deb', outcome: 'not delivered', detail: 'number not in use' };
const call = async (payload: unknown, authorization = `Bearer ${key}`, url = '/text-message') =>
  (
    await app.inject({
      method: 'POST',
      url,
      headers: { authorization, 'content-type': 'application/json' },
      payload: typeof payload === 'string' ? payload : JSON.stringify(payload),
    })
  ).statusCode;

it('is kept whole in the folder from which words are taken in', async () => {
  expect(await call(says)).toBe(204);
  const [name = '', ...more] = readdirSync(folder);
  expect([name, more]).toEqual([expect.stringMatching(/^[\da-f-]+\.json$/), []]);
  expect(JSON.parse(readFileSync(join(folder, name), 'utf8'))).toEqual(says);
});

it('with another key, of another shape, too long or elsewhere nothing is kept', async () => {
  const before = readdirSync(folder);
  expect(await call(says, 'Bearer another')).toBe(401);
  expect(await call(says, '')).toBe(401);
  expect(await call({ id: 7 })).toBe(422);
  expect(await call('{')).toBe(400);
  expect(await call({ ...says, detail: 'x'.repeat(5000) })).toBe(413);
  expect(await call(says, `Bearer ${key}`, '/api/people')).toBe(404);
  expect((await app.inject({ url: '/text-message', headers: { authorization: `Bearer ${key}` } })).statusCode).toBe(
    404,
  );
  expect(readdirSync(folder)).toEqual(before);
});

it('a disk that does not take it is told: the gateway comes again', async () => {
  const gone = join(folder, 'gone');
  const full = gatewayWordListener({ folder: gone, key });
  rmSync(gone, { recursive: true });
  const answer = await full.inject({
    method: 'POST',
    url: '/text-message',
    headers: { authorization: `Bearer ${key}` },
    payload: says,
  });
  await full.close();
  expect(answer.statusCode).toBe(503);
});

it('is off unless a port, a folder and a key that nobody guesses are given, and is on this machine only', () => {
  const read = (args: readonly string[], environment: Record<string, string> = {}) =>
    readCommandLine(['--empty', ...args], environment);
  expect(read(['--returned', 'in'])).toMatchObject({ options: { messages: { words: undefined } } });
  expect(read(['--returned', 'in', '--returned-port', '4400'], { TWELVEMONTH_RETURNED_KEY: key })).toMatchObject({
    options: { messages: { words: { port: 4400, key } } },
  });
  for (const [args, environment, because] of [
    [['--returned-port', '4400'], { TWELVEMONTH_RETURNED_KEY: key }, '--returned'],
    [['--returned', 'in', '--returned-port', '4400'], {}, 'TWELVEMONTH_RETURNED_KEY'],
    [['--returned', 'in', '--returned-port', '4400'], { TWELVEMONTH_RETURNED_KEY: 'short' }, '32'],
    [['--returned', 'in', '--returned-port', 'x'], { TWELVEMONTH_RETURNED_KEY: key }, 'not a port'],
  ] as const)
    expect(read(args, environment)).toEqual({ refused: expect.stringContaining(because) });
});
