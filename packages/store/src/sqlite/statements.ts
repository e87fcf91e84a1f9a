/** Every statement on the ledger's own tables, prepared once a connection. Nothing here decides anything. */
import type { DatabaseSync, SQLInputValue, StatementSync } from 'node:sqlite';
import type { Entry, Subject, Uuid } from '@twelvemonth/clinical';
import { noCommitYet, parseWrote, wroteText, type ActRecord, type CommitTail } from '../commit-chain.ts';
import type { DerivedRow, StoredRow } from '../contract.ts';
import {
  columnsOf,
  derivedRowOf,
  derivedTableNames,
  kindRange,
  quoted,
  valuesOf,
  type DerivedChanges,
} from '../derived-rows.ts';
import { entryColumns, entryOfRow, rowOfEntry, type EntryRow } from '../entry-row.ts';
import type { SealedEntry } from '../sealing.ts';

const entryFields = entryColumns.join(', ');

export function readStatements(database: DatabaseSync) {
  const ledger = database.prepare(`select ${entryFields} from entry where subject = ? order by seq`);
  const entryAt = database.prepare(`select ${entryFields} from entry where subject = ? and seq = ?`);
  const act = database.prepare('select commit_number, content_hash, wrote from act where id = ?');
  const tail = database.prepare('select number, hash from commit_log order by number desc limit 1');
  const commitHash = database.prepare('select hash from commit_log where number = ?');
  const tombstone = database.prepare('select body from tombstone where subject = ?');
  const setting = database.prepare('select value from setting where name = ?');
  // Jumps from one subject to the next in the primary key instead of reading every entry.
  const subjects = database.prepare(`with recursive known (subject) as (
      select min(subject) from entry where subject > ? and subject < ?
      union all select (select min(subject) from entry where subject > known.subject and subject < ?) from known where known.subject is not null)
    select subject from known where subject is not null limit ?`);
  const derived = derivedTableNames.map((table) => ({
    table,
    rows: database.prepare(`select * from ${quoted(table)} where subject = ?`),
  }));

  return {
    ledgerRows: (subject: Subject): EntryRow[] => ledger.all(subject) as unknown as EntryRow[],
    ledger: (subject: Subject): Entry[] => (ledger.all(subject) as unknown as EntryRow[]).map(entryOfRow),
    entryRowAt: (subject: Subject, seq: number): EntryRow | undefined =>
      entryAt.get(subject, seq) as unknown as EntryRow | undefined,
    act: (id: Uuid): (Omit<ActRecord, 'id'> & { readonly commit: number }) | undefined => {
      const row = act.get(id);
      return row === undefined
        ? undefined
        : {
            commit: Number(row['commit_number']),
            contentHash: String(row['content_hash']),
            wrote: parseWrote(String(row['wrote'])),
          };
    },
    tail: (): CommitTail => {
      const row = tail.get();
      return row === undefined ? noCommitYet : { commit: Number(row['number']), hash: String(row['hash']) };
    },
    commitHash: (commit: number): string | undefined => {
      const row = commitHash.get(commit);
      return row === undefined ? (commit === 0 ? noCommitYet.hash : undefined) : String(row['hash']);
    },
    isExpired: (subject: Subject): boolean => tombstone.get(subject) !== undefined,
    setting: (name: string): string | undefined => {
      const row = setting.get(name);
      return row === undefined ? undefined : String(row['value']);
    },
    /** Subjects of a kind after `after`, ascending, at most `limit` (-1: all). */
    subjects: (kind: string, after?: Subject, limit = -1): Subject[] => {
      const [from, before] = kindRange(kind);
      return subjects.all(after ?? from, before, before, limit).map((row) => String(row['subject']) as Subject);
    },
    derivedRows: (subject: Subject): DerivedRow[] =>
      derived.flatMap(({ table, rows }) =>
        (rows.all(subject) as unknown as StoredRow[]).map((row) => derivedRowOf(table, row)),
      ),
  };
}

export type WriteStatements = ReturnType<typeof writeStatements>;
export function writeStatements(database: DatabaseSync) {
  const marks = (n: number): string => Array.from({ length: n }, () => '?').join(', ');
  const entry = database.prepare(`insert into entry (${entryFields}) values (${marks(entryColumns.length)})`);
  const act = database.prepare(
    'insert into act (commit_number, position, id, content_hash, wrote) values (?, ?, ?, ?, ?)',
  );
  const commit = database.prepare('insert into commit_log (number, hash) values (?, ?)');
  const tombstone = database.prepare(
    'insert into tombstone (subject, commit_number, by_first, by_second, body) values (?, ?, ?, ?, ?)',
  );
  const removeLedger = database.prepare('delete from entry where subject = ?');
  const acceptance = database.prepare('insert into restore_accepted (commit_number, body) values (?, ?)');
  const setting = database.prepare(
    'insert into setting (name, value) values (?, ?) on conflict (name) do update set value = excluded.value',
  );
  const derived = new Map<string, { readonly put: StatementSync; readonly remove: StatementSync }>(
    derivedTableNames.map((table) => {
      const columns = ['subject', 'key', ...columnsOf(table)];
      const put = database.prepare(
        `insert or replace into ${quoted(table)} (${columns.map(quoted).join(', ')}) values (${marks(columns.length)})`,
      );
      return [table, { put, remove: database.prepare(`delete from ${quoted(table)} where subject = ? and key = ?`) }];
    }),
  );
  const putDerived = (subject: Subject, row: DerivedRow): void =>
    void derived.get(row.table)?.put.run(subject, row.key, ...valuesOf(row));
  // One statement for each set of columns that ever changes together, so that indexes on the others are left alone.
  const updates = new Map<string, StatementSync>();
  const updating = (table: string, columns: readonly string[]): StatementSync => {
    const set = `${quoted(table)} set ${columns.map((name) => `${quoted(name)} = ?`).join(', ')}`;
    const statement = updates.get(set) ?? database.prepare(`update ${set} where subject = ? and key = ?`);
    updates.set(set, statement);
    return statement;
  };
  return {
    entry: (sealed: SealedEntry): void => void entry.run(...(rowOfEntry(sealed) as SQLInputValue[])),
    act: (commitNumber: number, position: number, record: ActRecord): void =>
      void act.run(commitNumber, position, record.id, record.contentHash, wroteText(record.wrote)),
    commit: (tail: CommitTail): void => void commit.run(tail.commit, tail.hash),
    tombstone: (subject: Subject, commitNumber: number, by: readonly [string, string], body: string): void => {
      tombstone.run(subject, commitNumber, by[0], by[1], body);
      removeLedger.run(subject);
    },
    acceptance: (commitNumber: number, body: string): void => void acceptance.run(commitNumber, body),
    setting: (name: string, value: string): void => void setting.run(name, value),
    derived: (subject: Subject, { remove, add, change }: DerivedChanges): void => {
      for (const row of remove) derived.get(row.table)?.remove.run(subject, row.key);
      for (const row of add) putDerived(subject, row);
      for (const { row, columns } of change) {
        const values = columns.map((name) => row.columns[name] ?? null);
        const { changes } = updating(row.table, columns).run(...values, subject, row.key);
        // Somebody removed it behind our back.
        if (changes === 0) putDerived(subject, row);
      }
    },
  };
}
