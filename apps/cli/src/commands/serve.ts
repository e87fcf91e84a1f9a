/** Starts the server on this same Node, with the same options, and ends as it ends. */
import { spawn } from 'node:child_process';
import { constants } from 'node:os';
import { fileURLToPath } from 'node:url';
import type { Command } from '../command.ts';

const server = fileURLToPath(new URL('../../../server/src/main.ts', import.meta.url));

export const serve: Command = {
  summary: 'start the server; its --help lists its options',
  help: '',
  run: async (args) => {
    // The channel lets the server notice when we are gone without a word.
    const child = spawn(process.execPath, [server, ...args], { stdio: ['inherit', 'inherit', 'inherit', 'ipc'] });
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => child.kill(signal));
    return new Promise<number>((resolve, reject) => {
      child.on('error', reject);
      child.on('exit', (code, signal) => resolve(code ?? 128 + (signal === null ? 0 : constants.signals[signal])));
    });
  },
};
