/** `npm start`: reads what was typed, starts the server, says where it is, and stops cleanly when asked. */
import { StoreProblem } from '@twelvemonth/store';
import { readCommandLine, usage } from './command-line.ts';
import { CannotStart } from './service-folder.ts';
import { type Running, start } from './start.ts';

const say = (line: string): void => {
  process.stdout.write(`${line}\n`);
};

function refuse(says: string): void {
  process.stderr.write(`twelvemonth: ${says}\n`);
  process.exitCode = 1;
}

const read = readCommandLine(process.argv.slice(2), process.env);
if ('help' in read) say(usage);
else if ('refused' in read) refuse(read.refused);
else await run(read.options);

async function run(options: Parameters<typeof start>[0]): Promise<void> {
  let running: Running | undefined;
  let asked = false;
  const stop = async (): Promise<void> => {
    asked = true;
    await running?.close();
    running = undefined;
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => void stop());
  // Whoever started us is gone without a word: go too.
  process.on('disconnect', () => void stop());
  try {
    running = await start(options, { say, isStopping: () => asked });
  } catch (error) {
    if (!(error instanceof CannotStart || error instanceof StoreProblem || isAddressTrouble(error))) throw error;
    if (!asked) refuse(error.message);
    letGo();
    return;
  }
  if (asked) await stop();
  else for (const line of running.greeting) say(line);
  await running?.ended;
  letGo();
}

/** The channel to whoever started us would keep the process alive. */
function letGo(): void {
  process.removeAllListeners('disconnect');
  if (process.connected) process.disconnect?.();
}

function isAddressTrouble(error: unknown): error is Error {
  return (
    error instanceof Error &&
    'code' in error &&
    (error.code === 'EADDRINUSE' || error.code === 'EADDRNOTAVAIL' || error.code === 'EACCES')
  );
}
