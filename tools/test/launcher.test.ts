/** `npm test` tells the truth, one launcher works at a time, and nothing outlives it. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { counted, runSteps } from '../launch/checks.mjs';
import { inTurn } from '../launch/turn.mjs';
import { root } from '../tidy/tree.ts';

type Outcome = { passed: number; failed: number; notRun: string[]; says: string[] };
const step = (name: string, outcome: Partial<Outcome>) => ({
  name,
  run: async () => ({ passed: 0, failed: 0, notRun: [], says: [], ...outcome }),
});
const test = (status: string, fullName = 'a test') => ({
  status,
  fullName,
  failureMessages: ['it broke:\nwaiting for a button\n    at here.ts:1'],
});

describe('the count of a test report', () => {
  it('counts tests that passed and tests that failed, and says what these were waiting for', () => {
    const report = {
      testResults: [{ status: 'failed', assertionResults: [test('passed'), test('failed'), test('passed')] }],
    };
    const says = [expect.stringMatching(/^a test: it broke:\n +waiting for a button$/)];
    expect(counted(report, 1)).toEqual({ passed: 2, failed: 1, notRun: [], says });
  });

  it('counts a file that could not be loaded, an error outside any test, and an empty report as failures', () => {
    const passing = { status: 'passed', assertionResults: [test('passed')] };
    expect(counted({ testResults: [passing, { status: 'failed', assertionResults: [] }] }, 1).failed).toBe(1);
    expect(counted({ testResults: [passing] }, 1).failed).toBe(1);
    expect(counted({ testResults: [] }, 0).failed).toBe(1);
  });

  it('names what did not run', () => {
    const report = {
      testResults: [{ status: 'passed', assertionResults: [test('passed'), test('skipped', ' needs PostgreSQL')] }],
    };
    expect(counted(report, 0)).toEqual({ passed: 1, failed: 0, notRun: ['needs PostgreSQL'], says: [] });
    const placeholder = {
      testResults: [
        { status: 'passed', assertionResults: [test('passed'), test('passed', 'NOT RUN HERE: no strace')] },
      ],
    };
    expect(counted(placeholder, 0)).toEqual({ passed: 1, failed: 0, notRun: ['NOT RUN HERE: no strace'], says: [] });
  });
});

describe('the summary', () => {
  const printed: string[] = [];
  const watch = () => vi.spyOn(console, 'log').mockImplementation((line: string) => void printed.push(line));
  afterEach(() => {
    vi.restoreAllMocks();
    printed.length = 0;
  });

  it('ends with the count alone on its line, after every step has run', async () => {
    watch();
    const broken = {
      name: 'broken',
      run: async () => {
        throw new Error('no such program');
      },
    };
    expect(await runSteps([step('one', { passed: 3, failed: 1 }), broken, step('last', { passed: 4 })], false)).toBe(1);
    expect(printed.at(-1)).toBe('7 passed, 2 failed');
    expect(printed.some((line) => line.includes('FAILED  broken'))).toBe(true);
  });

  it('names what failed near its end, where a long log is read', async () => {
    watch();
    await runSteps([step('one', { failed: 1, says: ['a dose: it broke'] })], false);
    expect(printed).toContain('          a dose: it broke');
  });

  it('passes only when nothing failed', async () => {
    watch();
    expect(await runSteps([step('one', { passed: 3 })], false)).toBe(0);
    expect(printed.at(-1)).toBe('3 passed, 0 failed');
  });

  it('names what could not run here, and fails for it under CI', async () => {
    watch();
    const steps = [step('stores', { passed: 3, notRun: ['needs PostgreSQL'] })];
    expect(await runSteps(steps, false)).toBe(0);
    expect(printed).toContain('  could not run here: needs PostgreSQL');
    expect(await runSteps(steps, true)).toBe(1);
    expect(printed.at(-1)).toBe('3 passed, 1 failed');
  });

  it('names a further opinion that could not be had, and fails for it nowhere', async () => {
    watch();
    const steps = [step('formulas', { passed: 3, notRun: ['OPTIONAL, NOT RUN HERE: R is not here'] })];
    expect(await runSteps(steps, true)).toBe(0);
    expect(printed).toContain('  could not run here: OPTIONAL, NOT RUN HERE: R is not here');
    expect(printed.at(-1)).toBe('3 passed, 0 failed');
  });
});

describe('a turn', () => {
  const name = `test-${process.pid}`;
  const file = join(root, `.turn-${name}`);
  afterEach(() => rmSync(file, { force: true }));

  it('is one launcher’s at a time', async () => {
    const events: string[] = [];
    const work = (who: string) => async () => {
      events.push(`${who} begins`);
      await wait(50);
      events.push(`${who} ends`);
    };
    await Promise.all(['a', 'b', 'c'].map((who) => inTurn(name, work(who))));
    const pairs = [0, 2, 4].map((at) => [events[at]?.[0], events[at + 1]?.[0]]);
    expect(pairs.every(([first, second]) => first === second)).toBe(true);
    expect(events).toHaveLength(6);
  });

  it('left behind by a process that is gone is taken over, and the work counts as interrupted', async () => {
    const gone = spawn(process.execPath, ['-e', '']);
    await once(gone, 'exit');
    writeFileSync(file, `${gone.pid}\n`);
    expect(await inTurn(name, async ({ interrupted }: { interrupted: boolean }) => interrupted)).toBe(true);
    expect(existsSync(file)).toBe(false);
  });

  it('stays marked when the work fails', async () => {
    const failing = async () => {
      throw new Error('no network');
    };
    await expect(inTurn(name, failing)).rejects.toThrow('no network');
    expect(existsSync(file)).toBe(true);
  });
});

describe('a child process', () => {
  const alive = (pid: number): boolean => {
    try {
      return process.kill(pid, 0);
    } catch {
      return false;
    }
  };
  const launcher = `
    import { run } from ${JSON.stringify(new URL('../launch/children.mjs', import.meta.url).href)};
    const child = ['-e', 'console.log(process.pid); setInterval(() => {}, 1000)'];
    process.exitCode = await run(process.execPath, child, { stdio: 'inherit' });`;

  it.for(['SIGINT', 'SIGTERM', 'SIGHUP'] as const)('ends with its launcher on %s', async (signal) => {
    const started = spawn(process.execPath, ['--input-type=module', '-e', launcher], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    const [said] = (await once(started.stdout, 'data')) as [Buffer];
    const pid = Number(said.toString());
    expect(alive(pid)).toBe(true);
    started.kill(signal);
    const [code] = (await once(started, 'exit')) as [number];
    expect(code).toBeGreaterThan(128);
    expect(alive(pid)).toBe(false);
  });
});
