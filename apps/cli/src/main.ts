/** The command line as a process. */
import { run } from './run.ts';

// A reader that stops reading (`| head`) is no trouble.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});
// npm runs scripts in the folder of the program; paths are meant from the folder npm was called in.
const calledFrom = process.env['npm_lifecycle_event'] === 'twelvemonth' ? process.env['INIT_CWD'] : undefined;
if (calledFrom !== undefined) process.chdir(calledFrom);
/** Written over itself: back to the start of the line, and the rest of it wiped. */
const passing = (text: string): void => void process.stderr.write(`\r${text}\u001b[K`);
process.exitCode = await run(process.argv.slice(2), {
  out: (text) => void process.stdout.write(`${text}\n`),
  aside: (text) => void process.stderr.write(`${text}\n`),
  ...(process.stderr.isTTY ? { passing } : {}),
});
