/** What only PostgreSQL can suffer: other servers, lost connections, deadlocks, a server killed or set up wrongly. */
import { afterAll, expect, test } from 'vitest';
import { openPostgresStore, type ActOutcome, type CommitNotice, type Store } from '../src/index.ts';
import { judgeHistory, type HistoryLine, type StoredEntry } from './drills/history-checker.ts';
import { describePostgres } from './support/describe-postgres.ts';
import { withPostgres } from './support/laboratories.ts';
import { startPostgres, type PostgresServer } from './support/postgres-server.ts';
import { below, seeded } from './support/seeded.ts';
import { booking, wardRows, weighing } from './support/ward.ts';

const seed = 20_261_125;
const until = async (what: () => boolean): Promise<void> => {
  for (let tries = 0; tries < 400 && !what(); tries += 1) await new Promise((then) => setTimeout(then, 25));
  expect(what()).toBe(true);
};

await describePostgres('PostgreSQL under fire', (server) => {
  const onTwoServers = async (
    run: (first: Store, second: Store, connection: Awaited<ReturnType<PostgresServer['newDatabase']>>) => Promise<void>,
  ): Promise<void> => {
    const connection = await server.newDatabase();
    const stores = [
      await openPostgresStore({ connection, projection: wardRows }),
      await openPostgresStore({ connection, projection: wardRows }),
    ] as const;
    try {
      await run(...stores, connection);
    } finally {
      await Promise.all(stores.map((store) => store.close()));
    }
  };

  test('what one server writes, the other hears of, in order and once', () =>
    onTwoServers(async (first, second) => {
      const heard: CommitNotice[] = [];
      second.onCommit((notice) => heard.push(notice));
      for (let index = 1; index <= 20; index += 1)
        await (index % 3 === 0 ? second : first).act(booking(`b${index}`, 's1', `p${index}`, index));
      await until(() => heard.length === 20);
      expect(heard.map(({ commit }) => commit)).toEqual(Array.from({ length: 20 }, (_, index) => index + 1));
      expect(heard[1]).toEqual({
        commit: 2,
        subjects: [
          { subject: 'session/s1', seq: 2 },
          { subject: 'patient/p2', seq: 1 },
        ],
      });
    }));

  test('a server whose listening connection was cut reads what it missed when it is back', () =>
    onTwoServers(async (first, second, connection) => {
      const heard: number[] = [];
      second.onCommit(({ commit }) => heard.push(commit));
      await first.act(weighing('w1', 'p1'));
      await until(() => heard.length === 1);
      await withPostgres(connection, (client) =>
        client.query(
          `select pg_terminate_backend(pid) from pg_stat_activity where application_name = 'twelvemonth listening'`,
        ),
      );
      for (let index = 2; index <= 5; index += 1) await first.act(weighing(`w${index}`, 'p1'));
      await until(() => heard.length === 5);
      expect(heard).toEqual([1, 2, 3, 4, 5]);
    }));

  test('a deadlock is tried again and nobody sees it', () =>
    onTwoServers(async (first, _, connection) => {
      await first.act(weighing('w0', 'p1'));
      await withPostgres(connection, async (client) => {
        // A stranger takes the counter of commits and then wants the ledger: a ring that the database must break.
        await client.query(`set deadlock_timeout = '60s'`);
        await client.query('begin');
        await client.query('select 1 from commit_tail for update');
        const answered = first.act(weighing('w1', 'p1'));
        await new Promise((then) => setTimeout(then, 300));
        await client.query(`select pg_advisory_xact_lock(hashtextextended('patient/p1', 1))`);
        const { rows } = await client.query<{ deadlocks: string }>(
          `select pg_stat_force_next_flush(), deadlocks from pg_stat_database where datname = current_database()`,
        );
        await client.query('commit');
        expect((await answered).outcome).toBe('recorded');
        expect(rows).toHaveLength(1);
      });
      const counted = await withPostgres(connection, (client) =>
        client.query<{ deadlocks: string }>(
          'select deadlocks from pg_stat_database where datname = current_database()',
        ),
      );
      expect(Number(counted.rows[0]?.deadlocks)).toBeGreaterThan(0);
      expect((await first.verify()).ok).toBe(true);
    }));

  test('a tombstone from another transaction does not open the way for a removal', () =>
    onTwoServers(async (first, _, connection) => {
      await first.act(weighing('w1', 'p1'));
      await withPostgres(connection, async (client) => {
        await client.query(
          `insert into tombstone (subject, commit_number, by_first, by_second, body) values ('patient/p1', 2, 'one', 'two', '{}')`,
        );
        await expect(client.query('delete from entry')).rejects.toThrow('only added');
      });
    }));

  test(
    `connections cut and the whole server killed while thirty clients write: nothing acknowledged is lost, nothing twice (seed ${seed})`,
    { timeout: 120_000 },
    () =>
      onTwoServers(async (first, second, connection) => {
        const history: HistoryLine[] = [];
        const state = { going: true };
        const client = async (number: number): Promise<void> => {
          const random = seeded(seed + number);
          const store = number % 2 === 0 ? first : second;
          // Until the last fault is over, and long enough to be worth it on a slow disk.
          for (let index = 0; state.going || index < 15; index += 1) {
            const [act, session, patient, place] = [
              `c${number}-${index}`,
              `s${below(random, 5)}`,
              `p${below(random, 40)}`,
              1 + below(random, 5_000),
            ];
            history.push({ act, what: ['book', session, patient, place] });
            let outcome: ActOutcome;
            do {
              // Unknown is not lost: it is sent again until there is an answer.
              outcome = await store.act(booking(act, session, patient, place));
            } while (outcome.outcome === 'read-only');
            history.push({
              act,
              answer: outcome.outcome,
              ...('entries' in outcome
                ? { entries: outcome.entries.map(({ id, subject, seq, hash }) => ({ id, subject, seq, hash })) }
                : {}),
            });
          }
        };
        const clients = Promise.all(Array.from({ length: 30 }, (_, number) => client(number)));
        const random = seeded(seed);
        const faults = async (): Promise<void> => {
          for (let fault = 0; fault < 12; fault += 1) {
            await new Promise((then) => setTimeout(then, 40 + random() * 160));
            if (fault % 6 === 5) await server.killAndRestart();
            else {
              await withPostgres(connection, (stranger) =>
                stranger.query(
                  `select pg_terminate_backend(pid) from pg_stat_activity where application_name like 'twelvemonth%'`,
                ),
              );
            }
          }
        };
        await Promise.all([clients, faults().finally(() => (state.going = false))]);
        const stored = await withPostgres(connection, (stranger) =>
          stranger.query<StoredEntry>('select subject, seq, id, act, kind, body, hash from entry'),
        );
        expect(judgeHistory(history, stored.rows)).toEqual([]);
        expect(history.filter(({ answer }) => answer === 'recorded').length).toBeGreaterThan(300);
        expect((await first.verify()).ok).toBe(true);
        expect(first.readOnly).toBeUndefined();
      }),
  );
});

const careless = await startPostgres(['fsync=off']);
if ('server' in careless) {
  afterAll(() => careless.server.stop());
  test('a server that was told not to sync is refused', async () => {
    const connection = await careless.server.newDatabase();
    await expect(openPostgresStore({ connection, projection: wardRows })).rejects.toMatchObject({
      problem: 'unsuitable-database',
      message: 'This PostgreSQL server has fsync = off; notes need fsync = on.',
    });
  });
}
