/**
 * One writing process a store. The lock is the operating system's own, held on a small file beside the database for as
 * long as the process lives: a process that died, however suddenly, holds nothing, and no process number can be mistaken.
 */
import { DatabaseSync } from 'node:sqlite';
import { StoreProblem } from '../store-problem.ts';

export type ProcessLock = { readonly release: () => void };

export function lockForWriting(databasePath: string): ProcessLock {
  const file = new DatabaseSync(`${databasePath}.lock`, { timeout: 0 });
  try {
    // Written first and committed, so that whoever finds the lock taken can say by whom.
    file.exec(
      'pragma synchronous = off; begin immediate; create table if not exists holder (process integer not null); delete from holder',
    );
    file.prepare('insert into holder values (?)').run(process.pid);
    file.exec('commit; begin immediate');
  } catch (cause) {
    const holder = isBusy(cause) ? holderOf(file) : undefined;
    file.close();
    if (!isBusy(cause)) throw cause;
    throw new StoreProblem(
      'in-use',
      `These notes are in use by ${holder}. Ask the running server instead, or stop it first.`,
    );
  }
  return { release: () => file.close() };
}

function holderOf(file: DatabaseSync): string {
  try {
    const row = file.prepare('select process from holder').get();
    return row === undefined ? 'another process' : `process ${String(row['process'])}`;
  } catch {
    return 'another process that is just starting';
  }
}

/** SQLITE_BUSY, result code 5 (https://www.sqlite.org/rescode.html); extended codes keep it in the low byte. */
export const isBusy = (error: unknown): boolean => sqliteCode(error) === 5;

/** The primary result code of an error that came from SQLite. */
export const sqliteCode = (error: unknown): number | undefined =>
  error instanceof Error && 'errcode' in error && typeof error.errcode === 'number' ? error.errcode & 0xff : undefined;
