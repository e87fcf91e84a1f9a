/** Which notes a command is about: a folder that holds one service, or one of several, or a PostgreSQL database. */
import { existsSync, readdirSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { projection } from '@twelvemonth/clinical';
import { type StoreReader, openPostgresReader, openSqliteReader } from '@twelvemonth/store';
import type { Output } from './command.ts';
import { cannotOpen, misused } from './ending.ts';

export const placeOptions = {
  data: { type: 'string', default: 'data' },
  service: { type: 'string' },
  postgres: { type: 'string' },
} as const;
export type PlaceOptions = {
  readonly data: string;
  readonly service?: string | undefined;
  readonly postgres?: string | undefined;
};

export const placeHelp = `  --data DIR         folder that holds the services of this machine (data), or one service
  --service NAME     which of them, where there are several
  --postgres URL     notes kept in PostgreSQL`;

const fileName = 'notes.db';
/** Where a service of one's own is kept; the demo lies beside it. */
const ownService = 'service';

/** Folders below `data` that hold notes. */
const servicesIn = (data: string): readonly string[] =>
  existsSync(data)
    ? readdirSync(data, { withFileTypes: true })
        .filter((entry) => entry.isDirectory() && existsSync(join(data, entry.name, fileName)))
        .map((entry) => entry.name)
        .toSorted()
    : [];

/** The database file that is there. */
export function notesFile({ data, service }: PlaceOptions): string {
  if (service !== undefined) {
    const path = join(data, service, fileName);
    if (!existsSync(path)) throw cannotOpen(`There are no notes in ${join(data, service)}.`);
    return path;
  }
  if (existsSync(join(data, fileName))) return join(data, fileName);
  const services = servicesIn(data);
  const [only, ...others] = services;
  if (only === undefined) throw cannotOpen(`There are no notes in ${data}. Say where they are with --data.`);
  if (others.length > 0)
    throw misused(`There are several services in ${data}: choose with --service (${services.join(', ')}).`);
  return join(data, only, fileName);
}

/** The database file that is there, or the one a service of one's own would have. */
export function notesFileOrNew(place: PlaceOptions): string {
  if (place.service !== undefined) return join(place.data, place.service, fileName);
  if (existsSync(join(place.data, fileName)) || servicesIn(place.data).length > 0) return notesFile(place);
  return join(place.data, ownService, fileName);
}

/** Opens for reading, beside a running server or without one, and says on standard error which notes these are. */
async function openNotes(place: PlaceOptions, { aside }: Output): Promise<StoreReader> {
  const path = place.postgres === undefined ? notesFile(place) : undefined;
  const reader =
    path === undefined
      ? openPostgresReader({ connection: { connectionString: place.postgres ?? '' }, projection })
      : openSqliteReader({ path, projection });
  const kind = await reader.setting('kind');
  const { commit } = await reader.tail();
  const said =
    kind === 'demo' ? 'the demo, every person in it is invented' : kind === 'own' ? 'a real service' : 'unmarked notes';
  aside(`reading ${path === undefined ? 'PostgreSQL' : basename(dirname(path))}: ${said}, commit ${commit}`);
  return reader;
}

/** Uses the notes and closes them, whatever happens. */
export async function withNotes<T>(
  place: PlaceOptions,
  output: Output,
  use: (reader: StoreReader) => Promise<T>,
): Promise<T> {
  const reader = await openNotes(place, output);
  try {
    return await use(reader);
  } finally {
    await reader.close();
  }
}
