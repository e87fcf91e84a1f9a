import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { demoFolder, markedAs, openNotesStore, ownFolder } from '../src/service-folder.ts';

const main = fileURLToPath(new URL('../src/main.ts', import.meta.url));
let data: string;
beforeAll(() => {
  data = mkdtempSync(join(tmpdir(), 'twelvemonth-'));
});
afterAll(() => rmSync(data, { recursive: true, force: true }));

type Started = {
  readonly child: ChildProcess;
  readonly url: string;
  readonly ended: Promise<number | null>;
  readonly said: () => string;
};

/** Starts the server as `npm start` does and waits until it says where it is. */
async function started(...args: string[]): Promise<Started> {
  const child = spawn(process.execPath, [main, '--data', data, '--port', '0', ...args], {
    stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
  });
  let said = '';
  child.stdout?.on('data', (part: Buffer) => (said += part.toString()));
  child.stderr?.on('data', (part: Buffer) => (said += part.toString()));
  const ended = new Promise<number | null>((resolve) => child.once('exit', resolve));
  const url = await Promise.race([
    new Promise<string>((resolve) =>
      child.stdout?.on('data', () => {
        const found = /answers at (\S+)/.exec(said)?.[1];
        if (found !== undefined) resolve(found);
      }),
    ),
    ended.then((code) => {
      throw new Error(`ended with ${code}: ${said}`);
    }),
  ]);
  return { child, url, ended, said: () => said };
}

async function portIsFree(url: string): Promise<boolean> {
  const { port, hostname } = new URL(url);
  const probe = createServer();
  return new Promise((resolve) => {
    probe.once('error', () => resolve(false));
    probe.listen(Number(port), hostname, () => probe.close(() => resolve(true)));
  });
}

describe('a server that is asked to stop', () => {
  for (const how of ['SIGTERM', 'SIGINT', 'SIGHUP', 'the end of whoever started it'] as const) {
    test(`by ${how} ends with 0, gives back its port and its notes, and leaves no process`, async () => {
      const { child, url, ended } = await started('--empty');
      expect((await fetch(`${url}/api/status`)).status).toBe(200);
      if (how === 'the end of whoever started it') child.disconnect();
      else child.kill(how);
      expect(await ended).toBe(0);
      expect(await portIsFree(url)).toBe(true);
      const store = await openNotesStore({ folder: ownFolder(data) });
      await store.close();
    });
  }

  test('twice still lets go of everything', async () => {
    const { child, url, ended } = await started('--empty');
    child.kill('SIGTERM');
    child.kill('SIGTERM');
    // On a busy machine the second may come when the runtime has taken its handlers down already: then it is what ends it.
    expect([0, null]).toContain(await ended);
    expect(await portIsFree(url)).toBe(true);
    const store = await openNotesStore({ folder: ownFolder(data) });
    await store.close();
  });
});

describe('a server that cannot start', () => {
  const refusal = async (...args: string[]): Promise<{ code: number | null; said: string }> => {
    const child = spawn(process.execPath, [main, '--data', data, '--port', '0', ...args], {
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let said = '';
    child.stdout.on('data', (part: Buffer) => (said += part.toString()));
    child.stderr.on('data', (part: Buffer) => (said += part.toString()));
    const code = await new Promise<number | null>((resolve) => child.once('exit', resolve));
    return { code, said };
  };

  test('says in one sentence that its notes are in use', async () => {
    const { child, ended } = await started('--empty');
    const second = await refusal('--empty');
    expect(second.code).toBe(1);
    expect(second.said).toContain('in use');
    expect(second.said).not.toContain('    at ');
    child.kill('SIGTERM');
    await ended;
  });

  test('never opens a demo as a service, nor a service as a demo', async () => {
    const store = await openNotesStore({ folder: demoFolder(data, '1-2026-11-25') });
    await markedAs(store, 'own');
    await expect(markedAs(store, 'demo')).rejects.toThrow('real service');
    await store.close();
    const other = await openNotesStore({ folder: join(data, 'elsewhere', 'service') });
    await markedAs(other, 'demo');
    await other.close();
    const opened = await refusal('--empty', '--data', join(data, 'elsewhere'));
    expect(opened.code).toBe(1);
    expect(opened.said).toContain('the demo');
  });

  test('does not listen where others could read along', async () => {
    const opened = await refusal('--empty', '--host', '0.0.0.0');
    expect(opened.code).toBe(1);
    expect(opened.said).toContain('--tls-cert');
  });

  test('says that a port is taken', async () => {
    const { child, url, ended } = await started('--empty');
    const opened = await refusal('--empty', '--data', join(data, 'third'), '--port', new URL(url).port);
    expect(opened.code).toBe(1);
    expect(opened.said).toContain('EADDRINUSE');
    child.kill('SIGTERM');
    await ended;
  });
});
