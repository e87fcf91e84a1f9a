/** A folder for one test's SQLite store, and the small damages done to its files. */
import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openSqliteStore, type SqliteOptions, type Store } from '../../src/index.ts';
import { wardRows } from './ward.ts';

export type Scratch = {
  readonly path: string;
  readonly open: (more?: Partial<SqliteOptions>) => Promise<Store>;
  /** Keeps the files as they are now, also of an open store, under another name. */
  readonly keep: (name: string) => string;
  readonly clear: () => void;
};

const endings = ['', '-wal', '-shm', '.anchor'] as const;

export function scratch(): Scratch {
  const folder = mkdtempSync(join(tmpdir(), 'tm-store-'));
  const path = join(folder, 'notes.db');
  return {
    path,
    open: (more = {}) => openSqliteStore({ path, projection: wardRows, ...more }),
    keep: (name) => {
      copyStore(path, join(folder, name));
      return join(folder, name);
    },
    clear: () => rmSync(folder, { recursive: true, force: true }),
  };
}

/** As a careless hand would copy: file by file, nothing asked. The shared-memory file is made again by SQLite. */
export function copyStore(
  from: string,
  to: string,
  which: readonly (typeof endings)[number][] = ['', '-wal', '.anchor'],
): void {
  for (const ending of which) {
    rmSync(`${to}${ending}`, { force: true });
    if (existsSync(`${from}${ending}`)) copyFileSync(`${from}${ending}`, `${to}${ending}`);
  }
  rmSync(`${to}-shm`, { force: true });
}

export async function withScratch(run: (place: Scratch) => Promise<void>): Promise<void> {
  const place = scratch();
  try {
    await run(place);
  } finally {
    place.clear();
  }
}
