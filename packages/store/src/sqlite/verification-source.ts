/** The rows of an SQLite store for `verify`. Expects a connection that is inside one reading transaction. */
import { setImmediate as nextTurn } from 'node:timers/promises';
import type { DatabaseSync } from 'node:sqlite';
import type { Subject } from '@twelvemonth/clinical';
import { derivedTableNames, quoted } from '../derived-rows.ts';
import { placeOfEntry, type VerificationSource } from '../verification.ts';
import { readStatements } from './statements.ts';

export function verificationSource(database: DatabaseSync): VerificationSource {
  const read = readStatements(database);
  const nextSubject = database.prepare('select min(subject) as subject from entry where subject > ?');
  const commits = database.prepare('select number, hash from commit_log where number > ? order by number limit ?');
  const acts = database.prepare(
    'select commit_number, id, content_hash, wrote from act where commit_number between ? and ? order by commit_number, position',
  );
  const count = (table: string): number =>
    Number(database.prepare(`select count(*) as n from ${quoted(table)}`).get()?.['n']);
  const bodies = (sql: string): { readonly [name: string]: unknown }[] => database.prepare(sql).all();

  return {
    counts: async () => ({
      entries: count('entry'),
      acts: count('act'),
      derivedRows: derivedTableNames.reduce((sum, table) => sum + count(table), 0),
    }),
    ledgersAfter: async (after, limit) => {
      await nextTurn();
      const ledgers: [Subject, ReturnType<typeof read.ledgerRows>][] = [];
      for (let last = after; ledgers.length < limit;) {
        const next = nextSubject.get(last)?.['subject'];
        if (typeof next !== 'string') break;
        ledgers.push([next as Subject, read.ledgerRows(next as Subject)]);
        last = next;
      }
      return ledgers;
    },
    derivedRows: async (subjects) => new Map(subjects.map((subject) => [subject, read.derivedRows(subject)])),
    commitsAfter: async (commit, limit) => {
      await nextTurn();
      return commits.all(commit, limit).map((row) => ({ commit: Number(row['number']), hash: String(row['hash']) }));
    },
    actsOf: async (from, until) =>
      acts.all(from, until).map((row) => ({
        commit: Number(row['commit_number']),
        id: String(row['id']),
        contentHash: String(row['content_hash']),
        wroteText: String(row['wrote']),
      })),
    entriesAt: async (places) =>
      new Map(
        places.flatMap((place) => {
          const row = read.entryRowAt(place.subject, place.seq);
          return row === undefined ? [] : [[placeOfEntry(place), row] as const];
        }),
      ),
    tombstones: async () =>
      new Map(
        bodies('select subject, commit_number, body from tombstone').map((row) => [
          String(row['subject']) as Subject,
          { commit: Number(row['commit_number']), body: String(row['body']) },
        ]),
      ),
    acceptances: async () =>
      bodies('select commit_number, body from restore_accepted').map((row) => ({
        commit: Number(row['commit_number']),
        body: String(row['body']),
      })),
    ownCheck: async () => {
      const found = String(database.prepare('pragma integrity_check(1)').get()?.['integrity_check']);
      return found === 'ok' ? undefined : found;
    },
  };
}
