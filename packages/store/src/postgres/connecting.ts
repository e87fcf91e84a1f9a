/** Connections, and which of their errors mean what. */
import { Client, DatabaseError, type ClientConfig } from 'pg';
import { StoreProblem } from '../store-problem.ts';

/** How to reach the server: `connectionString`, or host, port, user and database as `pg` takes them. */
export type PostgresConnection = ClientConfig;

/** A network that swallowed a connection is noticed after this, and the work is tried again on another one. */
const queryLimitMs = 10_000;
const connectLimitMs = 5_000;

export async function connect(connection: PostgresConnection, purpose = ''): Promise<Client> {
  const client = new Client({
    ...connection,
    keepAlive: true,
    connectionTimeoutMillis: connectLimitMs,
    application_name: `twelvemonth${purpose}`,
  });
  // Without a listener, a connection that breaks while idle would end the process; the next query reports it anyway.
  client.on('error', () => undefined);
  await client.connect();
  return client;
}

/** A connection for writing: a commit returns only when it is on disk, and a vanished process gives its locks back. */
export async function connectForWriting(connection: PostgresConnection): Promise<Client> {
  const client = await connect({ ...connection, query_timeout: queryLimitMs });
  try {
    await client.query(`set idle_in_transaction_session_timeout = '15s'`);
    const { rows } = await client.query<{ value: string }>(`select current_setting('synchronous_commit') as value`);
    if (rows[0]?.value === 'off' || rows[0]?.value === 'local') await client.query('set synchronous_commit = on');
    return client;
  } catch (cause) {
    await client.end().catch(() => undefined);
    throw cause;
  }
}

/** Refuses a server that was told not to sync, or that cannot hold every character. */
export async function refuseUnsuitable(client: Client): Promise<void> {
  const { rows } = await client.query<{ name: string; setting: string }>(
    `select name, setting from pg_settings where name in ('fsync', 'full_page_writes', 'server_encoding')`,
  );
  const wanted: Readonly<Record<string, string>> = { fsync: 'on', full_page_writes: 'on', server_encoding: 'UTF8' };
  const wrong = rows.find(({ name, setting }) => wanted[name] !== setting);
  if (wrong !== undefined) {
    throw new StoreProblem(
      'unsuitable-database',
      `This PostgreSQL server has ${wrong.name} = ${wrong.setting}; notes need ${wrong.name} = ${wanted[wrong.name]}.`,
    );
  }
}

/**
 * serialization_failure, deadlock_detected, unique_violation (the same act sent to two servers), lock_not_available,
 * idle_in_transaction_session_timeout (this process was held up).
 */
const worthAnotherTry = new Set(['40001', '40P01', '23505', '55P03', '25P03']);
/** disk_full, read_only_sql_transaction (a standby), cannot_connect_now and kin. */
const notNow = /^(53|57P|58|08|25006)/;

export type Trouble = 'again' | 'unreachable' | 'defect';

export function troubleOf(cause: unknown): Trouble {
  if (!(cause instanceof DatabaseError) || cause.code === undefined)
    return isConnectionTrouble(cause) ? 'unreachable' : 'defect';
  if (worthAnotherTry.has(cause.code)) return 'again';
  return notNow.test(cause.code) ? 'unreachable' : 'defect';
}

/** What `pg` and the system say when the connection itself is gone; they are not database errors. */
const isConnectionTrouble = (cause: unknown): boolean =>
  cause instanceof Error &&
  (('code' in cause && typeof cause.code === 'string' && /^E[A-Z]+$/.test(cause.code)) ||
    /connection|timeout|Client (was closed|has encountered)/i.test(cause.message));

export const messageOf = (cause: unknown): string => (cause instanceof Error ? cause.message : String(cause));
