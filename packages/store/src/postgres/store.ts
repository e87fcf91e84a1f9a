/** The store on PostgreSQL, for services with more than one server. Nothing is held here that cannot be thrown away. */
import { Kysely, PostgresDialect } from 'kysely';
import { Pool, type Client } from 'pg';
import type { Subject } from '@twelvemonth/clinical';
import { announcer } from '../announcer.ts';
import type { ActOutcome, ExpiryOutcome, Projection, Store, StoreRefusal } from '../contract.ts';
import { expiryRecord, refusedExpiry } from '../custody.ts';
import { derivedTableNames, quoted } from '../derived-rows.ts';
import { ledgersOfRows } from '../entry-row.ts';
import { lawfulSubject } from '../sealing.ts';
import { connectForWriting, messageOf, refuseUnsuitable, troubleOf } from './connecting.ts';
import { writer } from './group-commit.ts';
import { followCommits } from './notices.ts';
import { reading, readingPool, type PostgresOptions } from './reading.ts';
import { migrate, migrations } from './schema.ts';
import { closeCommit, entryRows, lockLedgers, replaceDerived, subjectsAfter, tailOf, takeCommit } from './tables.ts';

const ledgersInARebuildStep = 100;

/** Rejects with a StoreProblem if these notes must not be written to, or with the connection's own error. */
export async function openPostgresStore(options: PostgresOptions): Promise<Store> {
  const { connection, projection } = options;
  const tail = await prepare(connection);
  const pool = readingPool(connection);
  const lentPool = new Pool({ ...connection, max: 4, keepAlive: true, connectionTimeoutMillis: 5_000 });
  lentPool.on('error', () => undefined);
  const lent = new Kysely<Record<string, never>>({ dialect: new PostgresDialect({ pool: lentPool }) });
  const announce = announcer();
  const write = writer(connection, projection, (notice) => notices.own(notice));
  const notices = followCommits({ connection, from: tail.commit, tell: announce.tell, reached: write.reachedAgain });
  let closed = false;

  return {
    ...reading(pool, options),
    act: async <Refusal extends StoreRefusal>(request: Parameters<Store['act']>[0]) => {
      if (closed) throw new Error('the store is closed');
      return (await write.act(request)) as ActOutcome<Refusal>;
    },
    rebuild: async (progress = () => undefined) => {
      await write.alone(removeOrphans);
      const subjects = await subjectsAfter(pool, '', null, null);
      for (let done = 0; done < subjects.length; done += ledgersInARebuildStep) {
        const step = subjects.slice(done, done + ledgersInARebuildStep);
        await write.alone((client) => project(client, step, projection));
        progress(Math.min(done + ledgersInARebuildStep, subjects.length), subjects.length);
      }
    },
    setSetting: (name, value) =>
      write.alone(async (client) => {
        await client.query(
          'insert into setting (name, value) values ($1, $2) on conflict (name) do update set value = excluded.value',
          [name, value],
        );
      }),
    expireLedger: async (subject, expiry) => {
      lawfulSubject(subject);
      try {
        const outcome = await write.alone((client) => expire(client, subject, expiry));
        if (outcome.outcome === 'expired') notices.own({ commit: outcome.commit, subjects: [{ subject, seq: 0 }] });
        return outcome;
      } catch (cause) {
        if (troubleOf(cause) !== 'unreachable') throw cause;
        return {
          outcome: 'read-only',
          says: `Not done: the database cannot be reached or cannot write (${messageOf(cause)}).`,
        };
      }
    },
    onCommit: announce.listen,
    get readOnly() {
      return write.readOnly();
    },
    kyselyHandle: () => ({ db: lent, type: 'postgres' }),
    close: async () => {
      if (closed) return;
      closed = true;
      await write.close();
      await notices.close();
      await lent.destroy();
      // Kysely ends the pool only if it was ever asked something.
      if (!lentPool.ended) await lentPool.end();
      await pool.end();
    },
  };
}

async function prepare(connection: PostgresOptions['connection']) {
  const client = await connectForWriting(connection);
  try {
    await refuseUnsuitable(client);
    await migrate(client, migrations);
    return await tailOf(client);
  } finally {
    await client.end();
  }
}

async function expire(
  client: Client,
  subject: Subject,
  expiry: Parameters<Store['expireLedger']>[1],
): Promise<ExpiryOutcome> {
  await lockLedgers(client, [subject]);
  const ledger = ledgersOfRows([subject], await entryRows(client, [subject])).get(subject) ?? [];
  const refused = refusedExpiry(ledger, expiry);
  if (refused !== undefined) return { outcome: 'refused', refusals: [refused] };
  const { record, body } = expiryRecord(subject, ledger, expiry);
  const before = await takeCommit(client);
  await client.query(
    'insert into tombstone (subject, commit_number, by_first, by_second, body) values ($1, $2, $3, $4, $5)',
    [subject, before.commit + 1, ...expiry.by, body],
  );
  await client.query('delete from entry where subject = $1', [subject]);
  await replaceDerived(client, new Map([[subject, []]]));
  const { commit } = await closeCommit(client, before, [record]);
  return { outcome: 'expired', entries: ledger.length, commit };
}

async function removeOrphans(client: Client): Promise<void> {
  for (const table of derivedTableNames) {
    await client.query(
      `delete from ${quoted(table)} t where not exists (select 1 from entry where entry.subject = t.subject)`,
    );
  }
}

async function project(client: Client, subjects: readonly Subject[], projection: Projection): Promise<void> {
  await lockLedgers(client, subjects);
  const ledgers = ledgersOfRows(subjects, await entryRows(client, subjects));
  await replaceDerived(
    client,
    new Map(
      [...ledgers].map(([subject, entries]) => [subject, entries.length === 0 ? [] : projection(subject, entries)]),
    ),
  );
}
