/** Opening for writing: nothing is written to notes that are in use elsewhere, are from a newer version, or have lost their end. */
import { existsSync } from 'node:fs';
import { DatabaseSync } from 'node:sqlite';
import { nextCommit, parseWrote, type CommitTail } from '../commit-chain.ts';
import { StoreProblem } from '../store-problem.ts';
import { anchorPath, openAnchor, readAnchor, standingOfAnchor, writeNewAnchor, type Anchor } from './anchor.ts';
import { copyDatabase } from './backup.ts';
import type { Disk } from './disk.ts';
import { migrate, refuseNewer, versionOf, type Migration } from './schema.ts';
import { readStatements } from './statements.ts';

export type Opened = { readonly database: DatabaseSync; readonly anchor: Anchor; readonly tail: CommitTail };

/** Expects the process lock to be held. */
export async function openForWriting(path: string, disk: Disk, migrations: readonly Migration[]): Promise<Opened> {
  if (!existsSync(path)) refuseLostDatabase(path);
  const database = connectForWriting(path);
  try {
    await bringUpToDate(database, path, migrations);
    const { tail, anchor } = openVouchedFor(database, path, disk);
    return { database, anchor, tail };
  } catch (cause) {
    database.close();
    throw cause;
  }
}

/** A connection that syncs on every commit, and proof that SQLite agreed to it. */
export function connectForWriting(path: string): DatabaseSync {
  const database = new DatabaseSync(path, { timeout: 5000 });
  try {
    // fullfsync: on macOS a plain sync stops at the drive's own memory. secure_delete: what has expired is overwritten.
    database.exec(
      'pragma journal_mode = wal; pragma synchronous = full; pragma fullfsync = on; pragma secure_delete = on',
    );
    // In pages and kibibytes: a log of 16 MB before it is written back, 64 MB of pages in memory.
    database.exec('pragma wal_autocheckpoint = 4000; pragma cache_size = -65536');
    const journal = database.prepare('pragma journal_mode').get()?.['journal_mode'];
    const synchronous = database.prepare('pragma synchronous').get()?.['synchronous'];
    if (journal !== 'wal' || synchronous !== 2) {
      throw new StoreProblem(
        'unsuitable-database',
        `The database cannot keep its promise here (journal ${String(journal)}, synchronous ${String(synchronous)}): put it on a local disk.`,
      );
    }
    return database;
  } catch (cause) {
    database.close();
    throw cause;
  }
}

async function bringUpToDate(database: DatabaseSync, path: string, migrations: readonly Migration[]): Promise<void> {
  const version = versionOf(database);
  refuseNewer(version, migrations);
  const newest = migrations.at(-1)?.version ?? 0;
  if (version === newest) return;
  if (version > 0) await copyDatabase(path, `${path}.before-form-${newest}`);
  migrate(database, migrations);
}

function openVouchedFor(database: DatabaseSync, path: string, disk: Disk): { tail: CommitTail; anchor: Anchor } {
  const read = readStatements(database);
  const tail = read.tail();
  refuseDamagedTail(database, tail);
  const anchorFile = anchorPath(path);
  // Before the first commit nothing has been promised, so there is nothing an anchor could miss.
  if (tail.commit === 0 && readAnchor(anchorFile).found === 'missing') writeNewAnchor(anchorFile, tail, disk);
  const reading = readAnchor(anchorFile);
  const standing = standingOfAnchor(reading, tail, read.commitHash);
  const anchor = openAnchor(anchorFile, reading.found === 'tail' ? reading.place : 0, disk);
  try {
    if (standing === 'behind') {
      // The commit may have reached only the system's memory before the process ended: first the disk, then the anchor.
      database.exec('pragma wal_checkpoint(truncate)');
      anchor.advance(tail);
    }
    return { tail, anchor };
  } catch (cause) {
    anchor.close();
    throw cause;
  }
}

/** The last commit is what everything new is chained to: it is recomputed at every start. `verify` recomputes them all. */
function refuseDamagedTail(database: DatabaseSync, tail: CommitTail): void {
  if (tail.commit === 0) return;
  const acts = database
    .prepare('select id, content_hash, wrote from act where commit_number = ? order by position')
    .all(tail.commit);
  const before = readStatements(database).commitHash(tail.commit - 1);
  const records = acts.map((row) => ({
    id: String(row['id']),
    contentHash: String(row['content_hash']),
    wrote: parseWrote(String(row['wrote'])),
  }));
  if (before === undefined || nextCommit({ commit: tail.commit - 1, hash: before }, records).hash !== tail.hash) {
    throw new StoreProblem(
      'damaged',
      `The last commit (${tail.commit}) is damaged. Run "verify" to see what else is, and put the newest copy back.`,
    );
  }
}

function refuseLostDatabase(path: string): void {
  const reading = readAnchor(anchorPath(path));
  if (reading.found === 'tail' && reading.tail.commit > 0) {
    throw new StoreProblem(
      'commits-missing',
      `${reading.tail.commit} commits are missing: there is an anchor file but no database at ${path}. Put the newest copy back with "restore".`,
    );
  }
}
