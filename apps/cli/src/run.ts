/** Finds the command, runs it, and turns expected trouble into a sentence and an exit code. */
import { StoreProblem } from '@twelvemonth/store';
import type { Command, Output } from './command.ts';
import { backup } from './commands/backup.ts';
import { certificate } from './commands/certificate.ts';
import { fillCommand } from './commands/fill.ts';
import { importRegister } from './commands/import.ts';
import { lookAheadCommand } from './commands/look-ahead.ts';
import { onePerson } from './commands/one-person.ts';
import { planCommand } from './commands/plan.ts';
import { readinessCommand } from './commands/readiness.ts';
import { rebuild } from './commands/rebuild.ts';
import { redecideCommand } from './commands/redecide.ts';
import { rehearseCommand } from './commands/rehearse.ts';
import { rehearseYearCommand } from './commands/rehearse-year.ts';
import { replayCommand } from './commands/replay.ts';
import { restore } from './commands/restore.ts';
import { review } from './commands/review.ts';
import { serve } from './commands/serve.ts';
import { show } from './commands/show.ts';
import { traceCommand } from './commands/trace.ts';
import { verify } from './commands/verify.ts';
import { whatIfCommand } from './commands/what-if.ts';
import { Ending, exitCodes } from './ending.ts';

const commands: Readonly<Record<string, Command>> = {
  serve,
  import: importRegister,
  readiness: readinessCommand,
  review,
  show,
  'one-person': onePerson,
  fill: fillCommand,
  plan: planCommand,
  rehearse: rehearseCommand,
  'rehearse-year': rehearseYearCommand,
  'look-ahead': lookAheadCommand,
  trace: traceCommand,
  verify,
  rebuild,
  redecide: redecideCommand,
  replay: replayCommand,
  'what-if': whatIfCommand,
  backup,
  restore,
  certificate,
};

const usage = `twelvemonth COMMAND [options]

${Object.entries(commands)
  .map(([name, { summary }]) => `  ${name.padEnd(13)} ${summary}`)
  .join('\n')}

twelvemonth COMMAND --help says what each takes.
Ends with 0: done and nothing is wrong; 1: the answer is no (not ready, refused, damaged, a row waits);
2: the command line cannot be meant; 3: notes, file or server cannot be opened; 130: stopped with Ctrl-C before there was an answer.`;

export async function run(args: readonly string[], output: Output): Promise<number> {
  const [name, ...rest] = args;
  if (name === undefined || name === '--help' || name === 'help') {
    (name === undefined ? output.aside : output.out)(usage);
    return name === undefined ? exitCodes.usage : exitCodes.done;
  }
  const command = Object.hasOwn(commands, name) ? commands[name] : undefined;
  if (command === undefined) {
    output.aside(`twelvemonth: there is no command "${name}".\n\n${usage}`);
    return exitCodes.usage;
  }
  if (rest.includes('--help') && command !== serve) {
    output.out(command.help);
    return exitCodes.done;
  }
  try {
    return await command.run(rest, output);
  } catch (error) {
    if (error instanceof Ending) {
      output.aside(`twelvemonth: ${error.message}`);
      return error.code;
    }
    if (error instanceof StoreProblem) {
      output.aside(`twelvemonth: ${error.message}`);
      return exitCodes.cannotOpen;
    }
    throw error;
  }
}
