/**
 * The database as the sign-in library sees it: a Kysely over a connection of its own. Its work and the group commits take
 * turns at the turnstile, so neither ever finds the other's transaction open.
 */
import { DatabaseSync, type SQLInputValue, type StatementSync } from 'node:sqlite';
import {
  CompiledQuery,
  Kysely,
  SqliteAdapter,
  SqliteDriver,
  SqliteIntrospector,
  SqliteQueryCompiler,
  type DatabaseConnection,
  type SqliteDatabase,
  type SqliteStatement,
} from 'kysely';
import type { KyselyHandle } from '../contract.ts';
import type { Turnstile } from './turnstile.ts';

export function lendDatabase(
  path: string,
  turnstile: Turnstile,
): KyselyHandle & { readonly close: () => Promise<void> } {
  const database = nodeSqlite(path);
  const db = new Kysely<Record<string, never>>({
    dialect: {
      createAdapter: () => new SqliteAdapter(),
      createDriver: () => new TurnTakingDriver(database, turnstile),
      createIntrospector: (of) => new SqliteIntrospector(of),
      createQueryCompiler: () => new SqliteQueryCompiler(),
    },
  });
  return {
    db,
    type: 'sqlite',
    close: async () => {
      await db.destroy();
      // Never opened by Kysely if nobody asked it anything.
      if (database.raw.isOpen) database.raw.close();
    },
  };
}

class TurnTakingDriver extends SqliteDriver {
  readonly #turnstile: Turnstile;
  constructor(database: SqliteDatabase, turnstile: Turnstile) {
    super({ database });
    this.#turnstile = turnstile;
  }
  override async acquireConnection(): Promise<DatabaseConnection> {
    await this.#turnstile.take();
    return super.acquireConnection();
  }
  override async releaseConnection(): Promise<void> {
    this.#turnstile.release();
  }
  /** Immediate, or a transaction that read first could be refused when it comes to write (SQLITE_BUSY_SNAPSHOT). */
  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('begin immediate'));
  }
}

const bound = (value: unknown): SQLInputValue => {
  if (value === undefined) return null;
  if (typeof value === 'boolean') return value ? 1 : 0;
  if (value instanceof Date) return value.toISOString();
  return value as SQLInputValue;
};

const statementsKept = 200;

function nodeSqlite(path: string): SqliteDatabase & { readonly raw: DatabaseSync } {
  const raw = new DatabaseSync(path, { timeout: 5000 });
  raw.exec('pragma synchronous = full; pragma fullfsync = on');
  const kept = new Map<string, SqliteStatement>();
  const wrap = (statement: StatementSync): SqliteStatement => ({
    reader: statement.columns().length > 0,
    all: (values) => statement.all(...values.map(bound)),
    run: (values) => statement.run(...values.map(bound)),
    iterate: (values) => statement.iterate(...values.map(bound)),
  });
  return {
    raw,
    close: () => {
      kept.clear();
      raw.close();
    },
    prepare: (sql) => {
      const statement = kept.get(sql) ?? wrap(raw.prepare(sql));
      if (kept.size < statementsKept) kept.set(sql, statement);
      return statement;
    },
  };
}
