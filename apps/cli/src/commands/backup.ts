/** One consistent copy of the notes, taken while they are in use, and read back before it gets its name. */
import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { type Command, readOptions } from '../command.ts';
import { exitCodes, misused } from '../ending.ts';
import { placeHelp, placeOptions, withNotes } from '../notes-place.ts';

export const backup: Command = {
  summary: 'one consistent copy of the notes, proved whole',
  help: `twelvemonth backup --to FILE [options]

Works beside a running server. The copy never replaces another; a copy that is not whole is thrown away.
Prints the commit the copy ends with: keep it beside the copy.

  --to FILE          where the copy goes; its anchor lies beside it
${placeHelp}`,
  run: async (args, output) => {
    const { values, positionals } = readOptions(args, { ...placeOptions, to: { type: 'string' } });
    if (positionals.length > 0) throw misused(`"${positionals.join(' ')}" is not meant here.`);
    const { to } = values;
    if (to === undefined) throw misused('Say where the copy goes with --to.');
    return withNotes(values, output, async (reader) => {
      mkdirSync(dirname(to), { recursive: true });
      const { commit, entries, path } = await reader.backup(to);
      output.out(`copied and whole: ${entries} entries, commit ${commit}, ${path}`);
      return exitCodes.done;
    });
  },
};
