/** Puts a copy in the place of the notes, or accepts notes their anchor does not vouch for. Never silently. */
import { existsSync, mkdirSync } from 'node:fs';
import { userInfo } from 'node:os';
import { dirname } from 'node:path';
import { projection } from '@twelvemonth/clinical';
import { acceptSqliteRestore, restoreSqlite } from '@twelvemonth/store';
import { now } from '../clock.ts';
import { type Command, readOptions } from '../command.ts';
import { exitCodes, misused } from '../ending.ts';
import { type PlaceOptions, notesFile, notesFileOrNew, placeOptions } from '../notes-place.ts';

export const restore: Command = {
  summary: 'put a copy in the place of the notes',
  help: `twelvemonth restore --from FILE [options]
twelvemonth restore --accept --by NAME --reason TEXT [options]

Restoring loses what was written since the copy was made: who accepts that and why is written into the notes as a commit of
its own, and the replaced files are kept aside. Stop the server first. Into a place without notes, NAME and TEXT are not asked.

  --from FILE        the copy
  --accept           take the notes as they are, although their anchor is ahead of them or missing
  --by NAME          who accepts what is lost
  --reason TEXT      why
  --data DIR         folder that holds the services of this machine (data), or one service
  --service NAME     which of them, where there are several

Notes kept in PostgreSQL are restored with PostgreSQL's own tools.`,
  run: async (args, { out }) => {
    const { values, positionals } = readOptions(args, {
      data: placeOptions.data,
      service: placeOptions.service,
      from: { type: 'string' },
      accept: { type: 'boolean', default: false },
      by: { type: 'string' },
      reason: { type: 'string' },
    });
    if (positionals.length > 0) throw misused(`"${positionals.join(' ')}" is not meant here.`);
    if ((values.from !== undefined) === values.accept) throw misused('Say either --from FILE or --accept.');
    const acceptance = (emptyPlace: boolean) => {
      const { by, reason } = values;
      if (by !== undefined && by.trim() !== '' && reason !== undefined && reason.trim() !== '')
        return { by, reason, at: now() };
      if (!emptyPlace)
        throw misused('Something is lost by this: say who accepts that with --by, and why with --reason.');
      return { by: by ?? userInfo().username, reason: reason ?? 'restored into a place without notes', at: now() };
    };
    const accepted =
      values.from === undefined
        ? await acceptAsTheyAre(values, acceptance(false))
        : await putBack(values.from, values, acceptance);
    out(`restored: ${accepted.entries} entries, commit ${accepted.commit}. ${accepted.says}`);
    if (accepted.replaced !== undefined) out(`what was there is kept as ${accepted.replaced}`);
    return exitCodes.done;
  },
};

type Acceptance = { readonly by: string; readonly reason: string; readonly at: string };
type Restored = {
  readonly entries: number;
  readonly commit: number;
  readonly says: string;
  readonly replaced?: string;
};

const acceptAsTheyAre = async (place: PlaceOptions, acceptance: Acceptance): Promise<Restored> =>
  acceptSqliteRestore({ path: notesFile(place), projection, acceptance });

async function putBack(
  from: string,
  place: PlaceOptions,
  acceptance: (emptyPlace: boolean) => Acceptance,
): Promise<Restored> {
  const path = notesFileOrNew(place);
  const empty = !existsSync(path) && !existsSync(`${path}.anchor`);
  const accepted = acceptance(empty);
  mkdirSync(dirname(path), { recursive: true });
  return restoreSqlite({ from, path, projection, acceptance: accepted });
}
