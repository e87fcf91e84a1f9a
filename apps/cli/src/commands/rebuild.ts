/** Makes the lists beside the notes again, from the notes alone. */
import { projection } from '@twelvemonth/clinical';
import { openPostgresStore, openSqliteStore } from '@twelvemonth/store';
import { type Command, readOptions } from '../command.ts';
import { exitCodes, misused } from '../ending.ts';
import { notesFile, placeHelp, placeOptions } from '../notes-place.ts';

export const rebuild: Command = {
  summary: 'make the lists beside the notes again',
  help: `twelvemonth rebuild [options]

The lists (who is due, tasks, places) are made from the notes and can be made again from them at any time; no entry changes.
A server does it by itself when it starts with another version. Stop the server first.

${placeHelp}`,
  run: async (args, { out, aside }) => {
    const { values, positionals } = readOptions(args, placeOptions);
    if (positionals.length > 0) throw misused(`"${positionals.join(' ')}" is not meant here.`);
    const store =
      values.postgres === undefined
        ? await openSqliteStore({ path: notesFile(values), projection })
        : await openPostgresStore({ connection: { connectionString: values.postgres }, projection });
    try {
      await store.rebuild((done, of) => aside(`${done} of ${of} ledgers`));
    } finally {
      await store.close();
    }
    out('The lists are made again from the notes.');
    return exitCodes.done;
  },
};
