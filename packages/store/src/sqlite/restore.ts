/**
 * Putting an older copy in the place of the notes. It loses what was written since, so it is never done silently: who
 * accepted it and why becomes a commit of its own, and the replaced files are kept aside.
 */
import { existsSync, renameSync } from 'node:fs';
import { dirname } from 'node:path';
import type { DatabaseSync } from 'node:sqlite';
import { nextCommit, type CommitTail } from '../commit-chain.ts';
import type { Projection } from '../contract.ts';
import { acceptanceRecord, type Acceptance } from '../custody.ts';
import { StoreProblem } from '../store-problem.ts';
import { verifySource } from '../verification.ts';
import { anchorPath, readAnchor, standingOfAnchor, writeNewAnchor } from './anchor.ts';
import { copyDatabase, removeDatabase } from './backup.ts';
import { realDisk, syncFolder } from './disk.ts';
import { connectForWriting } from './opening.ts';
import { lockForWriting } from './process-lock.ts';
import { openForReading } from './reading.ts';
import { refuseNewer, versionOf } from './schema.ts';
import { readStatements, writeStatements } from './statements.ts';
import { verificationSource } from './verification-source.ts';

export type Accepted = {
  readonly commit: number;
  readonly entries: number;
  /** What the acceptance overrode, in a sentence; kept with who and why. */
  readonly says: string;
};

/** Accepts the database at `path` as it is although its anchor does not vouch for it. It must be whole in itself. */
export async function acceptSqliteRestore(options: {
  readonly path: string;
  readonly projection: Projection;
  readonly acceptance: Acceptance;
}): Promise<Accepted> {
  if (!existsSync(options.path)) throw new StoreProblem('no-such-store', `There are no notes at ${options.path}.`);
  const lock = lockForWriting(options.path);
  try {
    return await accept(options.path, options.projection, options.acceptance);
  } finally {
    lock.release();
  }
}

/** Puts the copy at `from` in the place of the notes at `path`; what was there is kept beside it under another name. */
export async function restoreSqlite(options: {
  readonly from: string;
  readonly path: string;
  readonly projection: Projection;
  readonly acceptance: Acceptance;
}): Promise<Accepted & { readonly replaced?: string }> {
  const { from, path, projection, acceptance } = options;
  const lock = lockForWriting(path);
  try {
    const incoming = `${path}.incoming`;
    removeDatabase(incoming);
    await refuseDamaged(from, projection);
    await copyDatabase(from, incoming);
    const replaced = `${path}.replaced-${acceptance.at.replaceAll(/[^0-9TZ]/g, '')}`;
    const wasThere = existsSync(path);
    const wasEmpty = !wasThere && !existsSync(anchorPath(path));
    // The anchor stays where it is: until the acceptance is written, it stops anybody from starting on the older copy unawares.
    for (const ending of ['-wal', '-shm', ''])
      if (existsSync(`${path}${ending}`)) renameSync(`${path}${ending}`, `${replaced}${ending}`);
    renameSync(incoming, path);
    removeDatabase(incoming);
    syncFolder(dirname(path));
    return { ...(await accept(path, projection, acceptance, wasEmpty)), ...(wasThere ? { replaced } : {}) };
  } finally {
    lock.release();
  }
}

/** `wasEmpty`: nothing stood in that place, so there is nothing to compare the copy with. */
async function accept(
  path: string,
  projection: Projection,
  acceptance: Acceptance,
  wasEmpty = false,
): Promise<Accepted> {
  if (acceptance.by.trim() === '' || acceptance.reason.trim() === '')
    throw new TypeError('accepting a copy needs a name and a reason');
  const database = connectForWriting(path);
  try {
    refuseNewer(versionOf(database));
    const verification = await verifySource(verificationSource(database), projection);
    if (!verification.ok) throw damaged(path, verification.firstBad.says);
    const before = readStatements(database).tail();
    const says = wasEmpty
      ? 'There were no notes in this place before; what was written elsewhere after this copy was made is not in it.'
      : overridden(path, database, before);
    const tail = writeAcceptance(database, before, acceptance, says);
    writeNewAnchor(anchorPath(path), tail, realDisk);
    return { commit: tail.commit, entries: verification.entries, says };
  } finally {
    database.close();
  }
}

function writeAcceptance(database: DatabaseSync, before: CommitTail, acceptance: Acceptance, says: string): CommitTail {
  const write = writeStatements(database);
  const { record, body } = acceptanceRecord(acceptance, before.commit, says);
  const tail = nextCommit(before, [record]);
  database.exec('begin immediate');
  write.acceptance(tail.commit, body);
  write.act(tail.commit, 0, record);
  write.commit(tail);
  database.exec('commit');
  return tail;
}

function overridden(path: string, database: DatabaseSync, tail: CommitTail): string {
  try {
    standingOfAnchor(readAnchor(anchorPath(path)), tail, readStatements(database).commitHash);
    return 'Nothing was missing.';
  } catch (cause) {
    if (cause instanceof StoreProblem) return cause.message;
    throw cause;
  }
}

async function refuseDamaged(path: string, projection: Projection): Promise<void> {
  const copy = openForReading(path);
  try {
    refuseNewer(versionOf(copy));
    copy.exec('begin');
    const verification = await verifySource(verificationSource(copy), projection);
    if (!verification.ok) throw damaged(path, verification.firstBad.says);
  } finally {
    copy.close();
  }
}

const damaged = (path: string, says: string): StoreProblem =>
  new StoreProblem('damaged', `The copy at ${path} is not whole: ${says}`);
