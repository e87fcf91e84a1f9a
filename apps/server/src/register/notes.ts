/**
 * The notes folded, kept in memory so that lists are quick: one record a ledger, made again when the ledger has grown.
 * Nothing here is the truth; it can be thrown away at any time. Limit: all records of a service fit in memory (about 30 kB a
 * patient with eight years of entries).
 */
import { setImmediate as nextTurn } from 'node:timers/promises';
import {
  type Subject,
  type SubjectKind,
  type SubjectRecord,
  isSubjectOf,
  recordOf,
  subject,
  subjectKinds,
} from '@twelvemonth/clinical';
import type { Store } from '@twelvemonth/store';

export type Notes = {
  /** The record of a subject as of the last commit; empty if there are no notes. */
  readonly of: (kind: SubjectKind, id: string) => Promise<SubjectRecord>;
  /** Every record of a kind, ascending by subject. */
  readonly all: (kind: SubjectKind) => Promise<readonly SubjectRecord[]>;
  readonly close: () => void;
};

const ledgersInOneRead = 50;

export async function openNotes(store: Store): Promise<Notes> {
  const records = new Map<Subject, SubjectRecord>();
  const sorted = new Map<SubjectKind, readonly SubjectRecord[]>();
  const stale = new Set<Subject>();
  const stop = store.onCommit(({ subjects }) => {
    for (const { subject } of subjects) stale.add(subject);
  });
  let reading: Promise<void> = Promise.resolve();

  /** Reads what has grown since. Runs one at a time, so that an older reading never overwrites a newer. */
  function refresh(): Promise<void> {
    if (stale.size === 0) return reading;
    const next = reading.then(readStale);
    // Whoever waits for this reading sees it fail; the next one tries again.
    reading = next.catch(() => undefined);
    return next;
  }

  async function readStale(): Promise<void> {
    while (stale.size > 0) {
      const some = [...stale].slice(0, ledgersInOneRead);
      for (const subject of some) stale.delete(subject);
      try {
        for (const [subject, entries] of await store.ledgers(some)) {
          records.set(subject, recordOf(subject, entries));
          for (const kind of subjectKinds) if (isSubjectOf(kind, subject)) sorted.delete(kind);
        }
      } catch (cause) {
        for (const subject of some) stale.add(subject);
        throw cause;
      }
    }
  }

  for (const kind of subjectKinds) {
    const subjects = await store.subjects(kind);
    for (let from = 0; from < subjects.length; from += ledgersInOneRead) {
      for (const [subject, entries] of await store.ledgers(subjects.slice(from, from + ledgersInOneRead))) {
        records.set(subject, recordOf(subject, entries));
      }
      await nextTurn();
    }
  }

  return {
    of: async (kind, id) => {
      await refresh();
      const wanted = subject(kind, id);
      return records.get(wanted) ?? recordOf(wanted, []);
    },
    all: async (kind) => {
      await refresh();
      const known = sorted.get(kind);
      if (known !== undefined) return known;
      const made = [...records.values()]
        .filter((record) => isSubjectOf(kind, record.subject))
        .toSorted((a, b) => (a.subject < b.subject ? -1 : 1));
      sorted.set(kind, made);
      return made;
    },
    close: stop,
  };
}
