/** Reading from PostgreSQL. */
import { Client, Pool, type QueryResultRow } from 'pg';
import type { Subject } from '@twelvemonth/clinical';
import type { Projection, StoredRow, StoreReader } from '../contract.ts';
import { countSql, rowsSql, type Dialect } from '../derived-rows.ts';
import { entryOfRow, ledgersOfRows } from '../entry-row.ts';
import { StoreProblem } from '../store-problem.ts';
import { tailsDigest } from '../tails-digest.ts';
import { verifySource } from '../verification.ts';
import { connect, type PostgresConnection } from './connecting.ts';
import { entryRows, subjectsOfKind, tailOf } from './tables.ts';
import { verificationSource } from './verification-source.ts';

const dialect: Dialect = { marker: (n) => `$${n}`, position: (inText, text) => `strpos(${inText}, ${text})` };
const ledgersInABatch = 200;

export type PostgresOptions = { readonly connection: PostgresConnection; readonly projection: Projection };

export function openPostgresReader(options: PostgresOptions): StoreReader {
  const pool = readingPool(options.connection);
  return { ...reading(pool, options), close: () => pool.end() };
}

export function readingPool(connection: PostgresConnection): Pool {
  const pool = new Pool({
    ...connection,
    max: 4,
    keepAlive: true,
    connectionTimeoutMillis: 5_000,
    query_timeout: 30_000,
    application_name: 'twelvemonth',
  });
  // A connection that breaks while idle is replaced at the next question.
  pool.on('error', () => undefined);
  return pool;
}

export function reading(pool: Pool, { connection, projection }: PostgresOptions): Omit<StoreReader, 'close'> {
  return {
    kind: 'postgresql',
    ledger: async (subject) => (await entryRows(pool, [subject])).map(entryOfRow),
    ledgers: async (subjects) => ledgersOfRows(subjects, await entryRows(pool, subjects)),
    subjects: (kind) => subjectsOfKind(pool, kind),
    everyLedger: async (kind, visit, batch = ledgersInABatch) => {
      let after: Subject | undefined;
      for (;;) {
        // Subjects are only added, and one question reads their entries from one view.
        const subjects = await subjectsOfKind(pool, kind, after, batch);
        for (const [subject, entries] of ledgersOfRows(subjects, await entryRows(pool, subjects)))
          if (entries.length > 0) visit(subject, entries);
        if (subjects.length < batch) return;
        after = subjects.at(-1);
      }
    },
    rows: async (query) => {
      const { text, values } = rowsSql(query, dialect);
      return (await pool.query<StoredRow & QueryResultRow>(text, values)).rows;
    },
    count: async (query) => {
      const { text, values } = countSql(query, dialect);
      return Number((await pool.query<{ n: string }>(text, values)).rows[0]?.n);
    },
    setting: async (name) =>
      (await pool.query<{ value: string }>('select value from setting where name = $1', [name])).rows[0]?.value,
    tail: () => tailOf(pool),
    tailsDigest: () => inOneView(connection, (client) => tailsDigest(verificationSource(client))),
    verify: (progress, against) =>
      inOneView(connection, (client) => verifySource(verificationSource(client), projection, progress, against)),
    backup: async () => {
      throw new StoreProblem(
        'use-database-tools',
        'These notes are in PostgreSQL: copy them with pg_basebackup or pg_dump, and keep a "verify" digest elsewhere.',
      );
    },
  };
}

/** Long readings get a connection and one unmoving view of their own. */
async function inOneView<T>(connection: PostgresConnection, use: (client: Client) => Promise<T>): Promise<T> {
  const client = await connect(connection);
  try {
    await client.query('begin isolation level repeatable read read only');
    return await use(client);
  } finally {
    await client.end();
  }
}
