/**
 * Hazards 47 and 83: a letter, a call or a place for somebody who has died. Anyone in care may write it down; from that entry on
 * the person stands on no list from which anybody writes, rings, books or prepares. Tried on the demo, whose people stand on them all.
 */
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Running, demoPassword, readCommandLine, start } from '../src/index.ts';

const data = mkdtempSync(join(tmpdir(), 'twelvemonth-'));
let running: Running;
let cookie: string;

beforeAll(async () => {
  const line = readCommandLine(
    ['--data', data, '--port', '0', '--demo-seed', '7', '--demo-people', '150', '--demo-date', '2026-11-26'],
    {},
  );
  if (!('options' in line)) throw new Error('the command line was refused');
  running = await start(line.options, { say: () => undefined, isStopping: () => false });
  const answer = await fetch(`${running.url}/api/sign-in`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ username: 'imre.sandoval', password: demoPassword }),
  });
  cookie = answer.headers
    .getSetCookie()
    .map((one) => one.split(';')[0])
    .join('; ');
});
afterAll(async () => {
  await running.close();
  rmSync(data, { recursive: true, force: true });
});

const read = async (path: string): Promise<unknown> => {
  const answer = await fetch(`${running.url}${path}`, { headers: { cookie } });
  if (answer.status !== 200) throw new Error(`${path}: ${answer.status} ${await answer.text()}`);
  return answer.json();
};

/** Every person that an answer names, wherever in it. */
const peopleIn = (answer: unknown): readonly string[] =>
  Array.isArray(answer)
    ? answer.flatMap(peopleIn)
    : typeof answer === 'object' && answer !== null
      ? Object.entries(answer).flatMap(([key, value]) =>
          key === 'patient' && typeof value === 'string' ? [value] : peopleIn(value),
        )
      : [];

type Letter = { readonly patient: string; readonly stopped?: string };

/** Every list of the unit with the people on it; letters are only those that wait for something and are not stopped. */
async function lists(): Promise<ReadonlyMap<string, ReadonlySet<string>>> {
  const today = (await read('/api/today?unit=thornbeck')) as {
    readonly work: readonly { readonly what: string; readonly to?: string }[];
  };
  const letters = (await read('/api/letters?unit=thornbeck')) as Readonly<
    Record<'calledFor' | 'toSign' | 'toSend' | 'toAnswer', readonly Letter[]>
  >;
  const piles = today.work.flatMap(({ what, to }) => (to?.startsWith('/work') === true ? [what] : []));
  const paths = [
    'recall',
    'aftercare',
    'advice-line',
    'reminders',
    'pharmacy',
    'fill',
    'sessions/thornbeck-2026-12-01',
    'sessions/thornbeck-2026-12-01/standby',
    ...piles.map((what) => `work?what=${encodeURIComponent(what)}`),
  ];
  const listed = async (path: string) => read(`/api/${path}${path.includes('?') ? '&' : '?'}unit=thornbeck`);
  const found = await Promise.all(paths.map(async (path) => [decodeURIComponent(path), await listed(path)] as const));
  const waiting = [letters.calledFor, letters.toSign, letters.toSend, letters.toAnswer]
    .flat()
    .filter(({ stopped }) => stopped === undefined);
  return new Map(
    [...found, ['today', { ...today, visits: [] }] as const, ['letters', waiting] as const].map(([name, answer]) => [
      name,
      new Set(peopleIn(answer)),
    ]),
  );
}

const died = async (patient: string): Promise<void> => {
  const line = { kind: 'died', body: { source: 'her daughter rang' }, effectiveAt: '2026-11-25' };
  const answer = await fetch(`${running.url}/api/acts`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', cookie, origin: running.url },
    body: JSON.stringify({ id: randomUUID(), act: { name: 'record', patient, line } }),
  });
  if (answer.status !== 200) throw new Error(`${patient}: ${answer.status} ${await answer.text()}`);
};

test('who has died stands on no list any more, from that entry on', async () => {
  const before = await lists();
  const stoodOn = [...before].filter(([, people]) => people.size > 0).map(([name]) => name);
  expect(stoodOn).toEqual(
    expect.arrayContaining([
      'recall',
      'aftercare',
      'pharmacy',
      'fill',
      'letters',
      'today',
      'work?what=results to sign',
    ]),
  );
  // Who is in a chair at this moment has not died yesterday: that is asked about.
  const isHere = new Set(peopleIn(((await read('/api/today?unit=thornbeck')) as { visits: unknown }).visits));
  const dead = new Set([...before].flatMap(([, people]) => [...people].filter((one) => !isHere.has(one)).slice(0, 2)));
  for (const patient of dead) await died(patient);
  const after = await lists();
  const stillOn = [...after].flatMap(([name, people]) =>
    [...people].filter((patient) => dead.has(patient)).map((patient) => `${patient}: ${name}`),
  );
  // What is left to do is to give their place to somebody else.
  const places = 'work?what=places of people who will not come';
  expect(stillOn.filter((one) => !one.endsWith(places))).toEqual([]);
});
