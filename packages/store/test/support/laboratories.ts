/**
 * Where the contract is tried: the same two questions to both databases, "give me an empty store" and "do this to its
 * tables behind its back".
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { Client, type ClientConfig } from 'pg';
import {
  openPostgresReader,
  openPostgresStore,
  openSqliteReader,
  openSqliteStore,
  type Projection,
  type Store,
  type StoreReader,
} from '../../src/index.ts';
import type { PostgresServer } from './postgres-server.ts';
import { wardRows } from './ward.ts';

export type Bench = {
  readonly open: (projection?: Projection) => Promise<Store>;
  readonly openReader: (projection?: Projection) => StoreReader;
  /** SQL as a stranger would run it, with the tables' own protection in place. */
  readonly sql: (text: string, values?: readonly (string | number)[]) => Promise<Record<string, unknown>[]>;
  /** SQL of somebody who removed the protection first and put it back. */
  readonly tamper: (text: string) => Promise<void>;
  readonly clear: () => Promise<void>;
};

export type Laboratory = { readonly kind: Store['kind']; readonly newBench: () => Promise<Bench> };

export const sqliteLaboratory: Laboratory = {
  kind: 'sqlite',
  newBench: async () => {
    const folder = mkdtempSync(join(tmpdir(), 'tm-store-'));
    const path = join(folder, 'notes.db');
    return {
      open: (projection = wardRows) => openSqliteStore({ path, projection }),
      openReader: (projection = wardRows) => openSqliteReader({ path, projection }),
      sql: async (text, values = []) => withSqlite(path, (database) => database.prepare(text).all(...values)),
      tamper: async (text) => withSqlite(path, (database) => tamperSqlite(database, text)),
      clear: async () => rmSync(folder, { recursive: true, force: true }),
    };
  },
};

export function withSqlite<T>(path: string, use: (database: DatabaseSync) => T): T {
  const database = new DatabaseSync(path, { timeout: 5000, defensive: false });
  try {
    return use(database);
  } finally {
    database.close();
  }
}

function tamperSqlite(database: DatabaseSync, text: string): void {
  const triggers = database.prepare(`select name, sql from sqlite_master where type = 'trigger'`).all();
  for (const { name } of triggers) database.exec(`drop trigger ${String(name)}`);
  database.exec(text);
  for (const { sql } of triggers) database.exec(String(sql));
}

export const postgresLaboratory = (server: () => PostgresServer): Laboratory => ({
  kind: 'postgresql',
  newBench: async () => {
    const connection = await server().newDatabase();
    return {
      open: (projection = wardRows) => openPostgresStore({ connection, projection }),
      openReader: (projection = wardRows) => openPostgresReader({ connection, projection }),
      sql: (text, values = []) =>
        withPostgres(connection, async (client) => (await client.query(text, [...values])).rows),
      tamper: (text) =>
        withPostgres(connection, async (client) => {
          await client.query(`set session_replication_role = replica`);
          await client.query(text);
        }),
      clear: async () => undefined,
    };
  },
});

export async function withPostgres<T>(connection: ClientConfig, use: (client: Client) => Promise<T>): Promise<T> {
  const client = new Client(connection);
  await client.connect();
  try {
    return await use(client);
  } finally {
    await client.end();
  }
}
