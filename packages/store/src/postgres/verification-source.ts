/** The rows of a PostgreSQL store for `verify`. Expects a connection inside one repeatable-read transaction. */
import type { Client } from 'pg';
import type { Subject } from '@twelvemonth/clinical';
import { derivedTableNames, quoted } from '../derived-rows.ts';
import { ledgerRowsOf } from '../entry-row.ts';
import { placeOfEntry, type VerificationSource } from '../verification.ts';
import { derivedRowsOf, entryRows, entryRowsAt, subjectsAfter, tailOf } from './tables.ts';

export function verificationSource(client: Client): VerificationSource {
  const count = async (table: string): Promise<number> =>
    Number((await client.query<{ n: string }>(`select count(*) as n from ${quoted(table)}`)).rows[0]?.n);
  return {
    counts: async () => {
      let derivedRows = 0;
      for (const table of derivedTableNames) derivedRows += await count(table);
      return { entries: await count('entry'), acts: await count('act'), derivedRows };
    },
    ledgersAfter: async (after, limit) => {
      const subjects = await subjectsAfter(client, after, null, limit);
      return [...ledgerRowsOf(subjects, await entryRows(client, subjects))];
    },
    derivedRows: (subjects) => derivedRowsOf(client, subjects),
    commitsAfter: async (commit, limit) => {
      const { rows } = await client.query<{ number: string; hash: string }>(
        'select number, hash from commit_log where number > $1 order by number limit $2',
        [commit, limit],
      );
      return rows.map((row) => ({ commit: Number(row.number), hash: row.hash }));
    },
    actsOf: async (from, until) => {
      const { rows } = await client.query<{ commit_number: string; id: string; content_hash: string; wrote: string }>(
        'select commit_number, id, content_hash, wrote from act where commit_number between $1 and $2 order by commit_number, position',
        [from, until],
      );
      return rows.map((row) => ({
        commit: Number(row.commit_number),
        id: row.id,
        contentHash: row.content_hash,
        wroteText: row.wrote,
      }));
    },
    entriesAt: async (places) => new Map((await entryRowsAt(client, places)).map((row) => [placeOfEntry(row), row])),
    tombstones: async () => {
      const { rows } = await client.query<{ subject: Subject; commit_number: string; body: string }>(
        'select subject, commit_number, body from tombstone',
      );
      return new Map(rows.map((row) => [row.subject, { commit: Number(row.commit_number), body: row.body }]));
    },
    acceptances: async () => {
      const { rows } = await client.query<{ commit_number: string; body: string }>(
        'select commit_number, body from restore_accepted',
      );
      return rows.map((row) => ({ commit: Number(row.commit_number), body: row.body }));
    },
    ownCheck: async () => {
      const counter = await tailOf(client);
      const { rows } = await client.query<{ number: string; hash: string }>(
        'select number, hash from commit_log order by number desc limit 1',
      );
      const last = rows[0];
      if (counter.commit === Number(last?.number ?? 0) && (last === undefined || last.hash === counter.hash))
        return undefined;
      return `the counter of commits stands at ${counter.commit}, the last commit is ${last?.number ?? 0}`;
    },
  };
}
