/**
 * Where a service keeps its notes, and what kind of service they are: the demo or one's own. The mark is in the store, so
 * that neither is ever opened as the other.
 */
import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { projection } from '@twelvemonth/clinical';
import { type Projection, type Store, openPostgresStore, openSqliteStore } from '@twelvemonth/store';
import type { Kind } from './command-line.ts';

export const ownFolder = (data: string): string => join(data, 'service');
/** One folder a demo: its seed, its date, and its size and hour where they are not the usual ones. */
export const demoFolder = (data: string, name: string): string => join(data, `demo-${name}`);

/** Where the newest day sheets are kept; those of the demo never lie among real ones. */
export const daySheetFolder = ({ data, kind }: { readonly data: string; readonly kind: Kind }): string =>
  join(data, kind === 'demo' ? 'demo-day-sheets' : 'day-sheets');

/** Expected trouble at the start: a sentence for the person at the keyboard. */
export class CannotStart extends Error {}

export async function openNotesStore(
  place: { readonly folder: string } | { readonly postgres: string },
  rows: Projection = projection,
): Promise<Store> {
  if ('postgres' in place) {
    return openPostgresStore({ connection: { connectionString: place.postgres }, projection: rows });
  }
  mkdirSync(place.folder, { recursive: true });
  return openSqliteStore({ path: join(place.folder, 'notes.db'), projection: rows });
}

/** Marks new notes; refuses notes of the other kind. */
export async function markedAs(store: Store, kind: Kind): Promise<void> {
  const mark = await store.setting('kind');
  if (mark === kind) return;
  if (mark !== undefined) {
    throw new CannotStart(
      kind === 'own'
        ? 'These notes are the demo: they cannot become a service of your own. Choose another folder with --data.'
        : 'These notes belong to a real service: they cannot be opened as the demo. Start with --empty.',
    );
  }
  if ((await store.tail()).commit > 0)
    throw new CannotStart('These notes do not say whether they are the demo or a real service: nothing is opened.');
  await store.setSetting('kind', kind);
}

export function removeFolder(folder: string): void {
  rmSync(folder, { recursive: true, force: true });
}
