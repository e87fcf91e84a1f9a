/** Runs commands, judged by what they print and how they end. */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll } from 'vitest';
import { run } from '../src/run.ts';

const main = fileURLToPath(new URL('../src/main.ts', import.meta.url));

export type Ran = { readonly code: number | null; readonly out: string; readonly aside: string };

/** In this process: fast enough to try everything. */
export async function twelvemonth(args: readonly string[]): Promise<Ran> {
  let [out, aside] = ['', ''];
  const code = await run(args, {
    out: (text) => void (out += `${text}\n`),
    aside: (text) => void (aside += `${text}\n`),
  });
  return { code, out, aside };
}

/** As its users do: a process of its own. */
export async function asProcess(
  args: readonly string[],
  environment: Readonly<Record<string, string>> = {},
): Promise<Ran> {
  const child = spawn(process.execPath, [main, ...args], {
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, NODE_NO_WARNINGS: '1', ...environment },
  });
  let [out, aside] = ['', ''];
  child.stdout.setEncoding('utf8').on('data', (text: string) => (out += text));
  child.stderr.setEncoding('utf8').on('data', (text: string) => (aside += text));
  const code = await new Promise<number | null>((resolve) => child.on('close', resolve));
  return { code, out, aside };
}

export async function jsonOf<T>(args: readonly string[]): Promise<T & { readonly code: number | null }> {
  const ran = await twelvemonth([...args, '--json']);
  if (ran.out === '') throw new Error(ran.aside);
  return { ...(JSON.parse(ran.out) as T), code: ran.code };
}

/** A folder of the test's own, gone when its file is done. */
export function ownFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'twelvemonth-cli-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export function fileIn(folder: string, name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}
