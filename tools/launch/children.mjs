/** Child processes that never outlive the launcher: they get its signals, and it goes when the shell that started it goes. */
import { spawn } from 'node:child_process';
import { constants } from 'node:os';

const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'];
const orphanPollMilliseconds = 500;
const byNpm = process.env['npm_lifecycle_event'] !== undefined;
const patienceMilliseconds = 30_000;

/** The signal that ended or is ending this run, once there was one. */
let stopping;
export const stoppedBy = () => stopping;

/**
 * Runs a program to its end and resolves to its exit code (128 + signal number if a signal ended it).
 * npm dies of some signals without a word to us, so a lost npm counts as a signal to stop.
 */
export function run(program, args, { onStart, limitMilliseconds, ...options } = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, options);
    const timers = [];
    let told = false;
    const stop = (signal) => {
      told = true;
      stopping = signal;
      child.kill(signal);
      timers.push(setTimeout(() => child.kill('SIGKILL'), patienceMilliseconds));
    };
    const listeners = signals.map((signal) => [signal, () => stop(signal)]);
    for (const [signal, listener] of listeners) process.on(signal, listener);
    const parent = process.ppid;
    timers.push(
      setInterval(() => {
        if (byNpm && process.ppid !== parent && !told) stop('SIGTERM');
      }, orphanPollMilliseconds),
    );
    if (limitMilliseconds !== undefined) timers.push(setTimeout(() => child.kill('SIGKILL'), limitMilliseconds));
    const tidy = () => {
      for (const timer of timers) clearTimeout(timer);
      for (const [signal, listener] of listeners) process.off(signal, listener);
    };
    child.once('spawn', () => onStart?.(child));
    child.once('error', (error) => {
      tidy();
      reject(error);
    });
    child.once('exit', (code, signal) => {
      tidy();
      resolve(code ?? 128 + (constants.signals[signal] ?? 0));
    });
  });
}
