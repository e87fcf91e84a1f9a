#!/usr/bin/env node
// Plain JavaScript on purpose: any Node starts this file; the command itself runs on the pinned Node.
import { spawn } from 'node:child_process';
import { createRequire } from 'node:module';
import { constants } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const pinnedMajor = 26;
const entry = fileURLToPath(new URL('../src/main.ts', import.meta.url));

if (Number(process.versions.node.split('.')[0]) >= pinnedMajor) {
  process.argv[1] = entry;
  await import('../src/main.ts');
} else {
  const system = process.platform === 'win32' ? 'win' : process.platform;
  const prefix = system === 'darwin' && process.arch === 'arm64' ? 'node-bin' : 'node';
  const manifest = createRequire(import.meta.url).resolve(`${prefix}-${system}-${process.arch}/package.json`);
  const node = join(dirname(manifest), 'bin', system === 'win' ? 'node.exe' : 'node');
  const child = spawn(node, [entry, ...process.argv.slice(2)], { stdio: 'inherit' });
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill(signal));
  child.on('exit', (code, signal) => {
    process.exitCode = code ?? 128 + (constants.signals[signal] ?? 0);
  });
}
