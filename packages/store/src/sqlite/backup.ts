/**
 * A copy of the whole store taken while it is in use. The copy gets its name only after it has been read back and found
 * whole, so that a copy that failed never looks like one.
 */
import { existsSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { backup, DatabaseSync } from 'node:sqlite';
import type { Projection } from '../contract.ts';
import { StoreProblem } from '../store-problem.ts';
import { verifySource } from '../verification.ts';
import { anchorPath, writeNewAnchor } from './anchor.ts';
import { realDisk, syncFile, syncFolder } from './disk.ts';
import { readStatements } from './statements.ts';
import { verificationSource } from './verification-source.ts';

/** All pages in one step: with smaller steps every commit of the running server would start the copy again. */
const allPages = 2 ** 31 - 1;

export async function backUp(
  path: string,
  toPath: string,
  projection: Projection,
): Promise<{ commit: number; entries: number; path: string }> {
  if (existsSync(toPath))
    throw new StoreProblem('already-there', `There is a file at ${toPath} already; a copy never replaces another.`);
  const incoming = `${toPath}.incoming`;
  removeDatabase(incoming);
  try {
    await copyDatabase(path, incoming);
    const { commit, entries } = await vouchFor(incoming, projection);
    renameSync(incoming, toPath);
    renameSync(anchorPath(incoming), anchorPath(toPath));
    syncFolder(dirname(toPath));
    return { commit, entries, path: toPath };
  } finally {
    removeDatabase(incoming);
  }
}

/** The bare copy, on disk, without a log beside it. */
export async function copyDatabase(path: string, toPath: string): Promise<void> {
  const source = new DatabaseSync(path, { readOnly: true, timeout: 5000 });
  try {
    await backup(source, toPath, { rate: allPages });
  } finally {
    source.close();
  }
  syncFile(toPath);
}

/** Reads a copy through and gives it an anchor of its own. */
async function vouchFor(path: string, projection: Projection): Promise<{ commit: number; entries: number }> {
  const copy = new DatabaseSync(path);
  try {
    copy.exec('begin');
    const verification = await verifySource(verificationSource(copy), projection);
    if (!verification.ok)
      throw new StoreProblem('damaged', `The copy is not whole and was thrown away: ${verification.firstBad.says}`);
    writeNewAnchor(anchorPath(path), readStatements(copy).tail(), realDisk);
    return verification;
  } finally {
    copy.close();
  }
}

export function removeDatabase(path: string): void {
  for (const ending of ['', '-wal', '-shm', '-journal', '.anchor']) rmSync(`${path}${ending}`, { force: true });
}
