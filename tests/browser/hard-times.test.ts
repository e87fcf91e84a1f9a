/**
 * What must not change how long a drip has run: the server killed in the middle of it, and the nights in which the clocks are
 * put forward and back (Europe/London: 28 March 2027 at 01:00 GMT, 31 October 2027 at 02:00 BST; directive 2000/84/EC and the
 * Summer Time Order 2002).
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { infusionRuns, wilhelmina } from '../../apps/server/test/support/at-the-chair.ts';
import {
  ownServer,
  password,
  people,
  referralOf,
  sessionOn,
  setUp,
  workUp,
} from '../../apps/server/test/support/own-server.ts';
import { launch } from '../support/browser.ts';
import { hands, signIn } from '../support/hands.ts';
import { movableClock } from '../support/movable-clock.ts';
import { tablet } from '../support/service.ts';

const patient = 'wilhelmina';

describe('the server is killed in the middle of an infusion', () => {
  const program = fileURLToPath(new URL('../support/server-to-kill.ts', import.meta.url));
  const folder = mkdtempSync(join(tmpdir(), 'twelvemonth-'));
  let browser: Browser;
  let running: ChildProcess | undefined;
  beforeAll(async () => {
    browser = await launch();
  });
  afterAll(async () => {
    running?.kill('SIGKILL');
    await browser.close();
    rmSync(folder, { recursive: true, force: true });
  });

  async function started(port: string, moment: string, minutes: number, ...more: string[]): Promise<string> {
    const child = spawn(process.execPath, [program, folder, port, moment, String(minutes), ...more], {
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    running = child;
    return new Promise((resolve, reject) => {
      let said = '';
      const hear = (part: Buffer): void => {
        said += part.toString();
        const url = /answers at (\S+)/.exec(said)?.[1];
        if (url !== undefined) resolve(url);
      };
      child.stdout.on('data', hear);
      child.stderr.on('data', hear);
      child.once('exit', (code) => reject(new Error(`ended with ${code}: ${said}`)));
    });
  }

  it('the drip runs on at the screen and in the notes, and is finished once its minutes have run', async () => {
    const url = await started('0', '2026-11-25T09:00', 0, 'prepare');
    const page = await (await browser.newContext({ viewport: tablet, serviceWorkers: 'block' })).newPage();
    page.setDefaultTimeout(60_000);
    await page.goto(url);
    await signIn(page, people.nurse.username, password);
    await page.goto(`${url}/people/${patient}/visit`);
    await hands(page).sees('to the earliest finish');
    running?.kill('SIGKILL');
    await new Promise((resolve) => running?.once('exit', resolve));
    // The same port, so that the screen finds it again; the machine has run on for 31 minutes.
    await started(new URL(url).port, '2026-11-25T09:00', 31);
    await page.getByRole('button', { name: 'The bag is empty: 100 mL given' }).click();
    await page.getByRole('heading', { name: 'Remove the cannula' }).waitFor();
    const notes = await page.request.get(`${url}/api/people/${patient}`);
    const { entries } = (await notes.json()) as { entries: { kind: string; text: string }[] };
    expect(entries.filter(({ kind }) => kind === 'dose').map(({ text }) => text)).toEqual([
      expect.stringMatching(/over 31 minutes/),
    ]);
    expect(entries.filter(({ kind }) => kind === 'infusion-started')).toHaveLength(1);
  });
});

describe.each([
  ['forward', '2027-03-28', '2027-03-26', '2027-03-28T00:50', '02:10'],
  ['back', '2027-10-31', '2027-10-29', '2027-10-31T01:50', '01:10'],
])('the night the clocks are put %s', (_, night, sampled, begins, wallAfter) => {
  it('twenty minutes are twenty minutes', async () => {
    const clock = movableClock(begins);
    const server = await ownServer({ clock });
    try {
      await setUp(server, night);
      await server.done('clerk', sessionOn('thornbeck-2026-11-25', night));
      await server.done('clerk', referralOf(patient, wilhelmina));
      await workUp(server, patient, sampled);
      await server.done('clerk', { name: 'book', patient, session: 'thornbeck-2026-11-25', place: 1 });
      await infusionRuns(server, patient);
      const finish = { name: 'finish infusion', patient, milliliters: 100 };
      clock.moveOn(14);
      const early = await server.act('nurse', finish);
      expect(early.json<{ refusals: { name: string }[] }>().refusals[0]?.name).toBe('too-early-to-finish');
      clock.moveOn(6);
      expect(clock.local('Europe/London').moment.slice(11, 16)).toBe(wallAfter);
      await server.done('nurse', finish);
      const { entries } = await server.read<{ entries: { kind: string; text: string }[] }>(`/api/people/${patient}`);
      expect(entries.find(({ kind }) => kind === 'dose')?.text).toMatch(/over 20 minutes/);
    } finally {
      await server.close();
    }
  });
});
