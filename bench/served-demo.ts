/** A server process on a demo of its own, as after `npm start`, and a nurse signed in to it. */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const demoDay = '2026-11-25';
const serverMain = fileURLToPath(new URL('../apps/server/src/main.ts', import.meta.url));

export type Started = {
  readonly url: string;
  readonly greeting: string;
  readonly pid: number | undefined;
  readonly stop: () => Promise<void>;
};
export type Served = Started & { readonly cookie: string };

/** Resolves once it has said where it answers. */
export function startServer(data: string): Promise<Started> {
  const child = spawn(process.execPath, [serverMain, '--data', data, '--port', '0', '--demo-date', demoDay], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  return new Promise((resolve, reject) => {
    let greeting = '';
    child.once('exit', (code) => reject(new Error(`the server ended with ${code}: ${greeting}`)));
    child.stdout.on('data', (bytes: Buffer) => {
      greeting += bytes.toString();
      const url = /answers at (\S+)/.exec(greeting)?.[1];
      if (url === undefined || !greeting.includes('Ctrl-C')) return;
      resolve({ url, greeting, pid: child.pid, stop: () => (child.kill('SIGTERM'), ended) });
    });
  });
}

/** A nurse of the demo, as the greeting names them. */
export function nurseIn(greeting: string): { readonly username: string; readonly password: string } {
  const username = /^ {2}(\S+) +.*\(nurse\)/m.exec(greeting)?.[1];
  const password = /with the password "(.+)"/.exec(greeting)?.[1];
  if (username === undefined || password === undefined) throw new Error(`no nurse to sign in as: ${greeting}`);
  return { username, password };
}

/** Makes a demo, serves it and signs in; stopping takes the demo away again. */
export async function serveDemo(): Promise<Served> {
  const data = mkdtempSync(join(tmpdir(), 'twelvemonth-served-'));
  const started = await startServer(data);
  const answer = await fetch(`${started.url}/api/sign-in`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin: started.url },
    body: JSON.stringify(nurseIn(started.greeting)),
  });
  if (!answer.ok) throw new Error(`signing in was answered ${answer.status}`);
  const cookie = answer.headers
    .getSetCookie()
    .map((set) => set.split(';')[0])
    .join('; ');
  return {
    ...started,
    cookie,
    stop: async () => {
      await started.stop();
      rmSync(data, { recursive: true });
    },
  };
}
