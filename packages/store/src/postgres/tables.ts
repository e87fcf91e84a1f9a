/** Every statement on the ledger's own tables. Nothing here decides anything. */
import type { ClientBase, Pool } from 'pg';
import type { Subject } from '@twelvemonth/clinical';
import { nextCommit, parseWrote, wroteText, type ActRecord, type CommitTail } from '../commit-chain.ts';
import type { DerivedRow, DerivedTable, StoredRow } from '../contract.ts';
import {
  columnsOf,
  derivedChanges,
  derivedRowOf,
  derivedTableNames,
  kindRange,
  quoted,
  valuesOf,
  type DerivedChanges,
} from '../derived-rows.ts';
import { entryColumns, rowOfEntry, type EntryRow } from '../entry-row.ts';
import type { SealedEntry } from '../sealing.ts';

export type Queryable = Pick<ClientBase | Pool, 'query'>;

/** Waits for the ledgers in ascending order, so that two acts over the same ledgers never wait for each other in a ring. */
export async function lockLedgers(client: Queryable, subjects: readonly Subject[]): Promise<void> {
  await client.query(
    'select pg_advisory_xact_lock(hashtextextended(subject, 1)) from unnest($1::text[]) with ordinality as t (subject, n) order by n',
    [subjects],
  );
}

export async function entryRows(client: Queryable, subjects: readonly Subject[]): Promise<EntryRow[]> {
  const { rows } = await client.query<EntryRow>(
    `select ${entryColumns.join(', ')} from entry where subject = any ($1::text[]) order by subject, seq`,
    [subjects],
  );
  return rows;
}

export async function entryRowsAt(
  client: Queryable,
  places: readonly { readonly subject: Subject; readonly seq: number }[],
): Promise<EntryRow[]> {
  const { rows } = await client.query<EntryRow>(
    `select ${entryColumns.map((name) => `entry.${name}`).join(', ')} from unnest($1::text[], $2::integer[]) as place (subject, seq) join entry on entry.subject = place.subject and entry.seq = place.seq`,
    [places.map(({ subject }) => subject), places.map(({ seq }) => seq)],
  );
  return rows;
}

/** Jumps from one subject to the next in the primary key instead of reading every entry. */
export async function subjectsAfter(
  client: Queryable,
  after: string,
  before: string | null,
  limit: number | null,
): Promise<Subject[]> {
  const { rows } = await client.query<{ subject: Subject }>(
    `with recursive known (subject) as (
      (select subject from entry where subject > $1 and ($2::text is null or subject < $2) order by subject limit 1)
      union all select (select e.subject from entry e where e.subject > known.subject and ($2::text is null or e.subject < $2) order by e.subject limit 1) from known where known.subject is not null)
    select subject from known where subject is not null limit $3`,
    [after, before, limit],
  );
  return rows.map(({ subject }) => subject);
}

export const subjectsOfKind = (
  client: Queryable,
  kind: string,
  after?: Subject,
  limit: number | null = null,
): Promise<Subject[]> => {
  const [from, before] = kindRange(kind);
  return subjectsAfter(client, after ?? from, before, limit);
};

export type FoundAct = {
  readonly id: string;
  readonly commit: number;
  readonly contentHash: string;
  readonly wrote: ActRecord['wrote'];
};

export async function actsNamed(client: Queryable, ids: readonly string[]): Promise<Map<string, FoundAct>> {
  const { rows } = await client.query<{ id: string; commit_number: string; content_hash: string; wrote: string }>(
    'select id, commit_number, content_hash, wrote from act where id = any ($1::text[])',
    [ids],
  );
  return new Map(
    rows.map((row) => [
      row.id,
      { id: row.id, commit: Number(row.commit_number), contentHash: row.content_hash, wrote: parseWrote(row.wrote) },
    ]),
  );
}

export async function expiredAmong(client: Queryable, subjects: readonly Subject[]): Promise<Set<Subject>> {
  const { rows } = await client.query<{ subject: Subject }>(
    'select subject from tombstone where subject = any ($1::text[])',
    [subjects],
  );
  return new Set(rows.map(({ subject }) => subject));
}

export async function tailOf(client: Queryable): Promise<CommitTail> {
  const { rows } = await client.query<{ number: string; hash: string }>('select number, hash from commit_tail');
  return { commit: Number(rows[0]?.number), hash: String(rows[0]?.hash) };
}

/** Takes the next commit number. From here to the end of the transaction every other commit waits. */
export async function takeCommit(client: Queryable): Promise<CommitTail> {
  const { rows } = await client.query<{ number: string; hash: string }>(
    'select number, hash from commit_tail for update',
  );
  const row = rows[0];
  if (row === undefined) throw new Error('the counter of commits is gone');
  return { commit: Number(row.number), hash: row.hash };
}

/** Writes the acts, closes the commit and leaves a hint for other servers: subjects and seqs, nothing else. */
export async function closeCommit(
  client: Queryable,
  before: CommitTail,
  acts: readonly ActRecord[],
): Promise<CommitTail> {
  const tail = nextCommit(before, acts);
  await client.query(
    `insert into act (commit_number, position, id, content_hash, wrote)
     select $1, n - 1, id, content_hash, wrote from unnest($2::text[], $3::text[], $4::text[]) with ordinality as t (id, content_hash, wrote, n) order by n`,
    [
      tail.commit,
      acts.map((act) => act.id),
      acts.map((act) => act.contentHash),
      acts.map((act) => wroteText(act.wrote)),
    ],
  );
  await client.query('insert into commit_log (number, hash) values ($1, $2)', [tail.commit, tail.hash]);
  await client.query(
    `with hint as (select pg_notify('twelvemonth_commit', $1::text)) update commit_tail set number = $1::bigint, hash = $2 from hint`,
    [String(tail.commit), tail.hash],
  );
  return tail;
}

export async function insertEntries(client: Queryable, sealed: readonly SealedEntry[]): Promise<void> {
  if (sealed.length === 0) return;
  const rows = sealed.map(rowOfEntry);
  const types = entryColumns.map((name) => (name === 'seq' || name === 'shape' ? 'integer[]' : 'text[]'));
  await client.query(
    `insert into entry (${entryColumns.join(', ')})
     select ${entryColumns.map((name) => `t.${name}`).join(', ')}
     from unnest(${types.map((type, index) => `$${index + 1}::${type}`).join(', ')}) with ordinality as t (${entryColumns.join(', ')}, n) order by n`,
    entryColumns.map((_, column) => rows.map((row) => row[column])),
  );
}

/** All derived rows of some subjects, in one question. */
export async function derivedRowsOf(
  client: Queryable,
  subjects: readonly Subject[],
): Promise<Map<Subject, DerivedRow[]>> {
  const each = derivedTableNames.map(
    (table) =>
      `select '${table}' as from_table, to_json(t)::text as row from ${quoted(table)} t where subject = any ($1::text[])`,
  );
  const { rows } = await client.query<{ from_table: DerivedTable; row: string }>(each.join(' union all '), [subjects]);
  const found = new Map<Subject, DerivedRow[]>(subjects.map((subject) => [subject, []]));
  for (const { from_table, row } of rows) {
    const stored = JSON.parse(row) as StoredRow;
    found.get(stored.subject)?.push(derivedRowOf(from_table, stored));
  }
  return found;
}

type RowOf = { readonly subject: Subject; readonly row: DerivedRow };

/** Makes the derived rows of some subjects the wanted ones. */
export async function replaceDerived(
  client: Queryable,
  wanted: ReadonlyMap<Subject, readonly DerivedRow[]>,
): Promise<void> {
  const stored = await derivedRowsOf(client, [...wanted.keys()]);
  const changes = [...wanted].map(([subject, rows]) => ({
    subject,
    changes: derivedChanges(stored.get(subject) ?? [], rows),
  }));
  for (const table of derivedTableNames) {
    const ofTable = (rowsOf: (changes: DerivedChanges) => readonly DerivedRow[]): RowOf[] =>
      changes.flatMap(({ subject, changes: each }) =>
        rowsOf(each)
          .filter((row) => row.table === table)
          .map((row) => ({ subject, row })),
      );
    const remove = ofTable((each) => [...each.remove, ...each.change.map(({ row }) => row)]);
    const put = ofTable((each) => [...each.add, ...each.change.map(({ row }) => row)]);
    if (remove.length > 0) {
      await client.query(
        `delete from ${quoted(table)} where (subject, key) in (select * from unnest($1::text[], $2::text[]))`,
        [remove.map(({ subject }) => subject), remove.map(({ row }) => row.key)],
      );
    }
    if (put.length > 0) await insertDerived(client, table, put);
  }
}

async function insertDerived(client: Queryable, table: DerivedTable, put: readonly RowOf[]): Promise<void> {
  const columns = ['subject', 'key', ...columnsOf(table)].map(quoted).join(', ');
  const rows = put.map(({ subject, row }) => [subject, row.key, ...valuesOf(row)]);
  // As one JSON text the database gives each value its column's type.
  const named = rows.map((row) =>
    Object.fromEntries(['subject', 'key', ...columnsOf(table)].map((name, index) => [name, row[index]])),
  );
  await client.query(
    `insert into ${quoted(table)} (${columns}) select ${columns} from json_populate_recordset(null::${quoted(table)}, $1::json)`,
    [JSON.stringify(named)],
  );
}
