/**
 * Group commit on PostgreSQL: the acts waiting while one transaction runs share the next. They are decided one after the
 * other in memory, on ledgers that are locked, before anything is written, so one act's failure undoes nobody else's.
 */
import type { Client } from 'pg';
import type { Entry, Subject } from '@twelvemonth/clinical';
import { answerAgain, newAct, type Found, type NewAct } from '../acting.ts';
import type { ActOutcome, ActRequest, CommitNotice, Projection } from '../contract.ts';
import { entryOfRow, ledgersOfRows } from '../entry-row.ts';
import { subjectsOf } from '../judging.ts';
import { connectForWriting, messageOf, troubleOf, type PostgresConnection } from './connecting.ts';
import {
  actsNamed,
  closeCommit,
  entryRows,
  entryRowsAt,
  expiredAmong,
  insertEntries,
  lockLedgers,
  replaceDerived,
  takeCommit,
} from './tables.ts';

type Waiting = {
  readonly request: ActRequest;
  readonly answer: (outcome: ActOutcome) => void;
  readonly reject: (cause: unknown) => void;
};
/** What became of one act: an outcome, or what it threw. */
type Result = { readonly outcome: ActOutcome } | { readonly threw: unknown };

const mostInOneCommit = 256;
/** A stale decision, a deadlock or a broken connection is tried again this often. */
const tries = 3;

export type Writer = {
  readonly act: (request: ActRequest) => Promise<ActOutcome>;
  /** Runs something else that writes, in a transaction of its own, between the commits. Tried again like an act. */
  readonly alone: <T>(work: (client: Client) => Promise<T>) => Promise<T>;
  readonly readOnly: () => { readonly says: string } | undefined;
  readonly reachedAgain: () => void;
  readonly close: () => Promise<void>;
};

export function writer(
  connection: PostgresConnection,
  projection: Projection,
  committed: (notice: CommitNotice) => void,
): Writer {
  let waiting: Waiting[] = [];
  let queue: Promise<unknown> = Promise.resolve();
  let armed = false;
  let client: Client | undefined;
  let trouble: { readonly says: string } | undefined;

  const inTransaction = async <T>(work: (client: Client) => Promise<T>): Promise<T> => {
    for (let tried = 1; ; tried += 1) {
      try {
        client ??= await connectForWriting(connection);
        await client.query('begin isolation level read committed');
        const value = await work(client);
        await client.query('commit');
        trouble = undefined;
        return value;
      } catch (cause) {
        // Whether a transaction is still open is not known: the connection goes, and with it every lock.
        await dropConnection();
        const kind = troubleOf(cause);
        if (kind === 'defect' || tried === tries) throw cause;
        await pause(tried * 50);
      }
    }
  };

  const dropConnection = async (): Promise<void> => {
    const gone = client;
    client = undefined;
    await gone?.end().catch(() => undefined);
  };

  const commitGroup = async (group: readonly Waiting[]): Promise<void> => {
    try {
      const { results, notice } = await inTransaction((open) =>
        writeGroup(
          open,
          group.map(({ request }) => request),
          projection,
        ),
      );
      results.forEach((result, index) => {
        if ('outcome' in result) group[index]?.answer(result.outcome);
        else group[index]?.reject(result.threw);
      });
      if (notice !== undefined) committed(notice);
    } catch (cause) {
      if (troubleOf(cause) === 'unreachable') {
        trouble = {
          says: `Not saved: the database cannot be reached or cannot write (${messageOf(cause)}). Send it again when it is back: sending twice does no harm.`,
        };
        for (const one of group) one.answer({ outcome: 'read-only', says: trouble.says });
      } else if (group.length > 1) {
        // One of them is at fault: each alone, so that the others are saved.
        for (const one of group) await commitGroup([one]);
      } else group[0]?.reject(cause);
    }
  };

  const arm = (): void => {
    if (armed) return;
    armed = true;
    queue = commitNext(queue);
  };

  const commitNext = async (before: Promise<unknown>): Promise<void> => {
    await before;
    // Whatever arrives in this turn of the loop still joins.
    await new Promise((next) => setImmediate(next));
    armed = false;
    const group = waiting.slice(0, mostInOneCommit);
    waiting = waiting.slice(mostInOneCommit);
    if (waiting.length > 0) arm();
    if (group.length > 0) await commitGroup(group);
  };

  return {
    act: (request) =>
      new Promise((answer, reject) => {
        waiting.push({ request, answer, reject });
        arm();
      }),
    alone: (work) => {
      const done = queue.then(() => inTransaction(work));
      queue = done.catch(() => undefined);
      return done;
    },
    readOnly: () => trouble,
    reachedAgain: () => {
      trouble = undefined;
    },
    close: async () => {
      for (let last; last !== queue;) {
        last = queue;
        await last;
      }
      await dropConnection();
    },
  };
}

const pause = (ms: number): Promise<void> => new Promise((then) => setTimeout(then, ms));

async function writeGroup(
  client: Client,
  requests: readonly ActRequest[],
  projection: Projection,
): Promise<{ readonly results: readonly Result[]; readonly notice?: CommitNotice }> {
  const named = requests.map((request) => attempt(() => subjectsOf(request)));
  const subjects = [...new Set(named.flatMap((each) => ('value' in each ? each.value : [])))].toSorted();
  await lockLedgers(client, subjects);
  const ledgers: Map<Subject, readonly Entry[]> = ledgersOfRows(subjects, await entryRows(client, subjects));
  const expired = await expiredAmong(
    client,
    subjects.filter((subject) => ledgers.get(subject)?.length === 0),
  );
  const known = await knownActs(client, requests);

  // Decided before the number of the commit is taken, because taking it makes every other server wait.
  const made: NewAct[] = [];
  const results = requests.map((request, index): ((commit: number) => Result) => {
    const own = named[index];
    if (own === undefined || 'threw' in own) return () => ({ threw: own?.threw });
    const twin = made.find((act) => act.record.id === request.id);
    if (twin !== undefined)
      return (commit) => ({ outcome: answerAgain(request, { ...twin.record, commit, entries: entriesOf(twin) }) });
    const decided = attempt(() => {
      const found = known.get(request.id);
      if (found !== undefined) return answerAgain(request, found);
      return newAct(request, new Map(own.value.map((subject) => [subject, ledgers.get(subject) ?? []])), (subject) =>
        expired.has(subject),
      );
    });
    if ('threw' in decided) return () => decided;
    const act = decided.value;
    if ('outcome' in act) return () => ({ outcome: act });
    made.push(act);
    for (const [subject, ledger] of act.grown) ledgers.set(subject, ledger);
    return (commit) => ({ outcome: { outcome: 'recorded', entries: entriesOf(act), commit } });
  });
  if (made.length === 0) return { results: results.map((result) => result(0)) };

  const grown = [...new Set(made.flatMap((act) => [...act.grown.keys()]))];
  await insertEntries(
    client,
    made.flatMap((act) => act.sealed),
  );
  await replaceDerived(
    client,
    new Map(grown.map((subject) => [subject, projection(subject, ledgers.get(subject) ?? [])])),
  );
  const { commit } = await closeCommit(
    client,
    await takeCommit(client),
    made.map((act) => act.record),
  );
  return {
    results: results.map((result) => result(commit)),
    notice: { commit, subjects: grown.map((subject) => ({ subject, seq: ledgers.get(subject)?.length ?? 0 })) },
  };
}

const entriesOf = (act: NewAct): Entry[] => act.sealed.map(({ entry }) => entry);

async function knownActs(client: Client, requests: readonly ActRequest[]): Promise<Map<string, Found>> {
  const found = await actsNamed(
    client,
    requests.map(({ id }) => id),
  );
  const rows = await entryRowsAt(
    client,
    [...found.values()].flatMap(({ wrote }) => wrote),
  );
  const entries = new Map(rows.map((row) => [`${row.subject} ${row.seq}`, entryOfRow(row)]));
  return new Map(
    [...found].map(([id, act]) => [
      id,
      {
        ...act,
        entries: act.wrote
          .map(({ subject, seq }) => entries.get(`${subject} ${seq}`))
          .filter((entry) => entry !== undefined),
      },
    ]),
  );
}

function attempt<T>(run: () => T): { readonly value: T } | { readonly threw: unknown } {
  try {
    return { value: run() };
  } catch (threw) {
    return { threw };
  }
}
