/** The store on SQLite: one writing connection behind a group commit, one reading connection beside it. */
import { setImmediate as nextTurn } from 'node:timers/promises';
import type { DatabaseSync } from 'node:sqlite';
import type { Entry, Subject } from '@twelvemonth/clinical';
import { answerAgain, newAct } from '../acting.ts';
import { announcer } from '../announcer.ts';
import type {
  ActOutcome,
  ActRequest,
  DerivedRow,
  Expiry,
  ExpiryOutcome,
  Projection,
  Store,
  StoreRefusal,
} from '../contract.ts';
import { expiryRecord, refusedExpiry } from '../custody.ts';
import { derivedChanges, derivedTableNames, quoted } from '../derived-rows.ts';
import { subjectsOf } from '../judging.ts';
import { lawfulSubject } from '../sealing.ts';
import { realDisk, type Disk } from './disk.ts';
import { groupCommit, type Work } from './group-commit.ts';
import { lendDatabase } from './lent-database.ts';
import { openForWriting } from './opening.ts';
import { lockForWriting } from './process-lock.ts';
import { openForReading, reading } from './reading.ts';
import { recentLedgers, type KnownLedger } from './recent-ledgers.ts';
import { migrations as ourMigrations, type Migration } from './schema.ts';
import { readStatements, writeStatements } from './statements.ts';
import { turnstile } from './turnstile.ts';

export type SqliteOptions = {
  readonly path: string;
  readonly projection: Projection;
  /** The calls that reach the disk; tests count them and make them fail. */
  readonly disk?: Disk;
  /** The forms the tables have had; tests bring a later one. */
  readonly migrations?: readonly Migration[];
};

const entriesKeptInMemory = 20_000;
const ledgersInARebuildStep = 100;

/** Rejects with a StoreProblem if these notes must not be written to. */
export async function openSqliteStore(options: SqliteOptions): Promise<Store> {
  const { path, projection, disk = realDisk, migrations = ourMigrations } = options;
  const lock = lockForWriting(path);
  try {
    const { database, anchor, tail } = await openForWriting(path, disk, migrations);
    const readingDatabase = openForReading(path);
    const turns = turnstile();
    const lent = lendDatabase(path, turns);
    const announce = announcer();
    const write = writeStatements(database);
    const work = workOn(database, projection);
    const commits = groupCommit({
      database,
      write,
      anchor,
      disk,
      turnstile: turns,
      tail,
      forget: work.forget,
      committed: announce.tell,
    });
    let closed = false;

    return {
      ...reading(readingDatabase, options),
      act: async (request) => {
        if (closed) throw new Error('the store is closed');
        return commits.submit(work.act(request), (says): ActOutcome => ({ outcome: 'read-only', says })) as Promise<
          ActOutcome<never>
        >;
      },
      rebuild: async (progress = () => undefined) => {
        await commits.submit(work.removeOrphans(), refuse);
        const subjects = work.everySubject();
        for (let done = 0; done < subjects.length; done += ledgersInARebuildStep) {
          await commits.submit(work.rebuild(subjects.slice(done, done + ledgersInARebuildStep)), refuse);
          progress(Math.min(done + ledgersInARebuildStep, subjects.length), subjects.length);
          await nextTurn();
        }
      },
      setSetting: (name, value) =>
        commits.submit(() => {
          write.setting(name, value);
          return { value: undefined };
        }, refuse),
      expireLedger: async (subject, expiry) =>
        commits.submit(work.expire(lawfulSubject(subject), expiry), (says): ExpiryOutcome => ({
          outcome: 'read-only',
          says,
        })),
      onCommit: announce.listen,
      get readOnly() {
        return commits.readOnly();
      },
      kyselyHandle: () => ({ db: lent.db, type: lent.type }),
      close: async () => {
        if (closed) return;
        closed = true;
        await commits.drained();
        await lent.close();
        readingDatabase.close();
        database.close();
        anchor.close();
        lock.release();
      },
    };
  } catch (cause) {
    lock.release();
    throw cause;
  }
}

const refuse = (says: string): never => {
  throw new Error(says);
};

/** The pieces of work that run inside a group commit's transaction. */
function workOn(database: DatabaseSync, projection: Projection) {
  const read = readStatements(database);
  const write = writeStatements(database);
  const stored = (subject: Subject): KnownLedger => ({
    entries: read.ledger(subject),
    rows: read.derivedRows(subject),
  });
  const recent = recentLedgers(entriesKeptInMemory, stored);

  /** Makes the derived rows those of `entries`; `rows` are the ones that are there. */
  const project = (
    subject: Subject,
    entries: readonly Entry[],
    rows: readonly DerivedRow[] = recent.of(subject).rows,
  ): KnownLedger => {
    const wanted = entries.length === 0 ? [] : projection(subject, entries);
    write.derived(subject, derivedChanges(rows, wanted));
    return { entries, rows: wanted };
  };

  return {
    forget: recent.forget,
    act:
      <Refusal extends StoreRefusal>(request: ActRequest<Refusal>): Work<ActOutcome<Refusal>> =>
      (commit) => {
        const found = read.act(request.id);
        if (found !== undefined) {
          const entries = found.wrote
            .map(({ subject, seq }) => recent.of(subject).entries[seq - 1])
            .filter((entry) => entry !== undefined);
          return { value: answerAgain(request, { ...found, entries }) };
        }
        const ledgers = new Map(subjectsOf(request).map((subject) => [subject, recent.of(subject).entries]));
        const made = newAct(request, ledgers, read.isExpired);
        if ('outcome' in made) return { value: made };
        for (const sealed of made.sealed) write.entry(sealed);
        const known = [...made.grown].map(([subject, entries]) => [subject, project(subject, entries)] as const);
        for (const [subject, ledger] of known) recent.keep(subject, ledger);
        return {
          value: { outcome: 'recorded', entries: made.sealed.map(({ entry }) => entry), commit },
          act: made.record,
          grown: [...made.grown].map(([subject, entries]) => ({ subject, seq: entries.length })),
        };
      },
    expire:
      (subject: Subject, expiry: Expiry): Work<ExpiryOutcome> =>
      (commit) => {
        const { entries } = recent.of(subject);
        const refused = refusedExpiry(entries, expiry);
        if (refused !== undefined) return { value: { outcome: 'refused', refusals: [refused] } };
        const { record, body } = expiryRecord(subject, entries, expiry);
        write.tombstone(subject, commit, expiry.by, body);
        recent.keep(subject, project(subject, []));
        return {
          value: { outcome: 'expired', entries: entries.length, commit },
          act: record,
          grown: [{ subject, seq: 0 }],
        };
      },
    everySubject: (): Subject[] => {
      const kinds = database
        .prepare(`select distinct substr(subject, 1, instr(subject, '/') - 1) as kind from entry`)
        .all();
      return kinds.flatMap((row) => read.subjects(String(row['kind'])));
    },
    removeOrphans: (): Work<undefined> => () => {
      for (const table of derivedTableNames) {
        database.exec(
          `delete from ${quoted(table)} where not exists (select 1 from entry where entry.subject = ${quoted(table)}.subject)`,
        );
      }
      return { value: undefined };
    },
    rebuild:
      (subjects: readonly Subject[]): Work<undefined> =>
      () => {
        // From what is really stored, not from what is remembered.
        for (const subject of subjects) {
          const { entries, rows } = stored(subject);
          recent.keep(subject, project(subject, entries, rows));
        }
        return { value: undefined };
      },
  };
}
