/** Reading from SQLite on a connection that cannot write; used by the store beside its writer and by reading commands. */
import { setImmediate as nextTurn } from 'node:timers/promises';
import { DatabaseSync } from 'node:sqlite';
import { existsSync } from 'node:fs';
import type { Subject } from '@twelvemonth/clinical';
import { ledgersOfRows } from '../entry-row.ts';
import type { StoredRow, StoreReader } from '../contract.ts';
import { countSql, rowsSql, type Dialect } from '../derived-rows.ts';
import { StoreProblem } from '../store-problem.ts';
import { tailsDigest } from '../tails-digest.ts';
import { verifySource } from '../verification.ts';
import type { Projection } from '../contract.ts';
import { backUp } from './backup.ts';
import { refuseNewer, versionOf } from './schema.ts';
import { readStatements } from './statements.ts';
import { verificationSource } from './verification-source.ts';

const dialect: Dialect = { marker: () => '?', position: (inText, text) => `instr(${inText}, ${text})` };
const ledgersInABatch = 200;

/** Opens for reading beside a running server. */
export function openSqliteReader(options: { readonly path: string; readonly projection: Projection }): StoreReader {
  const database = openForReading(options.path);
  try {
    refuseNewer(versionOf(database));
    return { ...reading(database, options), close: async () => database.close() };
  } catch (cause) {
    database.close();
    throw cause;
  }
}

export function openForReading(path: string): DatabaseSync {
  if (!existsSync(path)) throw new StoreProblem('no-such-store', `There are no notes at ${path}.`);
  return new DatabaseSync(path, { readOnly: true, timeout: 5000 });
}

export function reading(
  database: DatabaseSync,
  { path, projection }: { readonly path: string; readonly projection: Projection },
): Omit<StoreReader, 'close'> {
  const read = readStatements(database);
  return {
    kind: 'sqlite',
    ledger: async (subject) => read.ledger(subject),
    ledgers: async (subjects) =>
      oneView(database, () => ledgersOfRows(subjects, [...new Set(subjects)].flatMap(read.ledgerRows))),
    subjects: async (kind) => read.subjects(kind),
    everyLedger: async (kind, visit, batch = ledgersInABatch) => {
      let after: Subject | undefined;
      for (;;) {
        const last = after;
        const ledgers = oneView(database, () =>
          read.subjects(kind, last, batch).map((subject) => ({ subject, entries: read.ledger(subject) })),
        );
        for (const { subject, entries } of ledgers) visit(subject, entries);
        if (ledgers.length < batch) return;
        after = ledgers.at(-1)?.subject;
        await nextTurn();
      }
    },
    rows: async (query) => {
      const { text, values } = rowsSql(query, dialect);
      return database
        .prepare(text)
        .all(...values)
        .map((row) => ({ ...row }) as unknown as StoredRow);
    },
    count: async (query) => {
      const { text, values } = countSql(query, dialect);
      return Number(database.prepare(text).get(...values)?.['n']);
    },
    setting: async (name) => read.setting(name),
    tail: async () => read.tail(),
    tailsDigest: async () => onItsOwn(path, (own) => tailsDigest(verificationSource(own))),
    verify: async (progress, against) =>
      onItsOwn(path, (own) => verifySource(verificationSource(own), projection, progress, against)),
    backup: async (toPath) => backUp(path, toPath, projection),
  };
}

/** Long readings get a connection and one unmoving view of their own, so that nothing else waits or sees it half done. */
async function onItsOwn<T>(path: string, use: (database: DatabaseSync) => Promise<T>): Promise<T> {
  const own = openForReading(path);
  try {
    own.exec('begin');
    return await use(own);
  } finally {
    own.close();
  }
}

function oneView<T>(database: DatabaseSync, read: () => T): T {
  database.exec('begin');
  try {
    return read();
  } finally {
    database.exec('commit');
  }
}
