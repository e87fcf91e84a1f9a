import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type {
  MeView,
  PersonView,
  StatusView,
  TodayView,
  VisitView,
  peopleAnswer,
  recallAnswer,
} from '@twelvemonth/exchange';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { z } from 'zod';
import { type Running, demoPassword, readCommandLine, start } from '../src/index.ts';
import { beginningOf } from '../src/demo/open-demo.ts';

/** A Thursday in 2026 on which Thornbeck holds a session. */
const typed = ['--port', '0', '--demo-seed', '7', '--demo-people', '60', '--demo-date', '2026-11-26'];
let data: string;
let running: Running | undefined;
const said: string[] = [];

async function started(...more: string[]): Promise<Running> {
  const line = readCommandLine(['--data', data, ...typed, ...more], {});
  if (!('options' in line)) throw new Error('the command line was refused');
  said.length = 0;
  running = await start(line.options, { say: (words) => void said.push(words), isStopping: () => false });
  return running;
}

async function cookieFor(url: string, username: string): Promise<string> {
  const answer = await fetch(`${url}/api/sign-in`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ username, password: demoPassword }),
  });
  expect(answer.status).toBe(200);
  return answer.headers
    .getSetCookie()
    .map((one) => one.split(';')[0])
    .join('; ');
}

async function read<Answer>(url: string, path: string, cookie: string): Promise<Answer> {
  const answer = await fetch(`${url}${path}`, { headers: { cookie } });
  if (answer.status !== 200) throw new Error(`${path}: ${answer.status} ${await answer.text()}`);
  return (await answer.json()) as Answer;
}

beforeAll(() => {
  data = mkdtempSync(join(tmpdir(), 'twelvemonth-'));
});
afterAll(async () => {
  await running?.close();
  rmSync(data, { recursive: true, force: true });
});

describe('the demo', () => {
  test('is made once with what it does said aloud, says that it is one, and verifies', async () => {
    const { url, atHand, greeting } = await started();
    expect(said[0]).toContain('Making the demo of 2026-11-26');
    expect(greeting.join('\n')).toContain(demoPassword);
    const status = (await (await fetch(`${url}/api/status`)).json()) as StatusView;
    expect(status).toMatchObject({ demo: true, today: '2026-11-26', demoPassword, needsFirstAdministrator: false });
    expect(status.units.every(({ demo }) => demo)).toBe(true);
    expect(demoPassword.length).toBeGreaterThanOrEqual(12);
    expect(await atHand.store.verify()).toMatchObject({ ok: true });
  });

  test('shows a day in full swing to each of its people, and nobody is unaccounted for', async () => {
    const { url } = running ?? (await started());
    const cookie = await cookieFor(url, 'imre.sandoval');
    expect(await read<MeView>(url, '/api/me', cookie)).toMatchObject({ name: 'Imre Sandoval', unit: 'thornbeck' });
    const people = await read<z.infer<typeof peopleAnswer>>(url, '/api/people', cookie);
    expect(people.people.length).toBeGreaterThan(50);
    expect(people.unaccounted).toBe(0);
    expect(people.standings.reduce((sum, { count }) => sum + count, 0)).toBe(people.total);
    const today = await read<TodayView>(url, '/api/today?unit=thornbeck', cookie);
    expect(today.session).toBe('thornbeck-2026-11-26');
    expect(today.counts.listed).toBe(today.visits.length);
    for (const visit of today.visits) await read<VisitView>(url, `/api/people/${visit.patient}/visit`, cookie);
  });

  test('the person on another medicine has its regimen and its clock on the page; the recall begins with the clocks', async () => {
    const { url } = running ?? (await started());
    const cookie = await cookieFor(url, 'imre.sandoval');
    const ursula = await read<PersonView>(url, '/api/people/regimen-3', cookie);
    expect(ursula.course?.regimen).toContain('romosozumab');
    expect(ursula.clock).toMatchObject({
      medicine: 'romosozumab 210 mg',
      tier: 'first in line',
      prescriberToday: 'prescriber today: order the medicine that follows romosozumab 210 mg',
    });
    const recall = await read<z.infer<typeof recallAnswer>>(url, '/api/recall?unit=thornbeck', cookie);
    const clocks = Object.fromEntries(
      recall.firstInLine.flatMap(({ patient, clock }) => (clock ? [[patient, clock.tier]] : [])),
    );
    expect(clocks).toMatchObject({
      'regimen-2': 'first in line',
      'regimen-3': 'first in line',
      'regimen-4': 'first in line',
    });
    const named = [...recall.people, ...recall.inReview, ...recall.firstInLine].map(({ patient }) => patient);
    expect(named, 'a single dose for another disease is not recalled').not.toContain('regimen-6');
  });

  test('opened again it is not made again, keeps what was written, and its clock goes on from where it stopped', async () => {
    const before = running ?? (await started());
    const { commit } = await before.atHand.store.tail();
    const stoppedAt = before.atHand.clock.now();
    await before.close();
    const { atHand } = await started();
    expect(said).toEqual([]);
    expect((await atHand.store.tail()).commit).toBe(commit);
    expect(atHand.clock.now() >= stoppedAt).toBe(true);
    expect(atHand.clock.now().slice(0, 10)).toBe('2026-11-26');
  });

  test('is made anew when asked to', async () => {
    await running?.close();
    await started('--reset-demo');
    expect(said[0]).toContain('Making the demo');
  });
});

test('without a date the demo lives on a day on which Thornbeck holds a session', () => {
  const { on, time } = beginningOf({ demoDate: undefined });
  expect([2, 4]).toContain(((((on + 3) % 7) + 7) % 7) + 1);
  expect(time).toBe('10:45');
});
