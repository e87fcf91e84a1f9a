/**
 * The notes folded, kept in memory so that lists are quick: one record a ledger, made again when the ledger has grown.
 * Nothing here is the truth; it can be thrown away at any time. Limit: all records of a service fit in memory (about 30 kB a
 * patient with eight years of entries).
 */
import { setImmediate as nextTurn } from 'node:timers/promises';
import {
  type Entry,
  type Subject,
  type SubjectKind,
  type SubjectRecord,
  factsOf,
  inOrderOfWriting,
  isSubjectOf,
  patientSubject,
  readIn,
  readInThese,
  recordOf,
  recordTogether,
  subject,
  subjectKinds,
} from '@twelvemonth/clinical';
import type { Store } from '@twelvemonth/store';

/** Notes of single packs are many and read once: they stay in the store. */
type Kept = Exclude<SubjectKind, 'pack'>;
const keptKinds = subjectKinds.filter((kind): kind is Kept => kind !== 'pack');

export type Notes = {
  /**
   * The record of a subject as of the last commit; empty if there are no notes. Of notes that are read in another's: that one's,
   * so that an old address or number leads to the notes that are kept.
   */
  readonly of: (kind: Kept, id: string) => Promise<SubjectRecord>;
  /** Every record of a kind, ascending by subject; notes of one person once. */
  readonly all: (kind: Kept) => Promise<readonly SubjectRecord[]>;
  readonly close: () => void;
};

const ledgersInOneRead = 50;

export async function openNotes(store: Store): Promise<Notes> {
  const records = new Map<Subject, SubjectRecord>();
  const sorted = new Map<SubjectKind, readonly SubjectRecord[]>();
  const stale = new Set<Subject>();
  const stop = store.onCommit(({ subjects }) => {
    for (const { subject } of subjects) if (!isSubjectOf('pack', subject)) stale.add(subject);
  });
  let reading: Promise<void> = Promise.resolve();
  /** Notes with others read in them, and for each of those others the notes that are kept. */
  const together = new Map<Subject, SubjectRecord>();
  const keptBy = new Map<Subject, Subject>();

  /** Folds again every record that reads one of these subjects, or that one of them says it reads. */
  async function joinAgain(changed: readonly Subject[]): Promise<void> {
    const kept = new Set<Subject>();
    for (const of of changed) {
      const alone = records.get(of);
      if (alone === undefined || !isSubjectOf('patient', of)) continue;
      for (const one of [keptBy.get(of), together.has(of) ? of : undefined]) if (one !== undefined) kept.add(one);
      if (factsOf(alone, 'same-person').length === 0) continue;
      const inOther = readIn(alone);
      if (inOther !== undefined) kept.add(patientSubject(inOther));
      if (readInThese(alone).length > 0) kept.add(of);
    }
    for (const of of kept) {
      for (const [other, one] of keptBy) if (one === of) keptBy.delete(other);
      together.delete(of);
      const alone = records.get(of);
      const others = alone === undefined ? [] : readInThese(alone).map(patientSubject);
      if (others.length === 0) continue;
      const ledgers = await store.ledgers([of, ...others]);
      together.set(
        of,
        recordTogether(of, ledgers.get(of) ?? [], (one) => ledgers.get(one)),
      );
      for (const other of others) keptBy.set(other, of);
    }
  }

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
          for (const kind of keptKinds) if (isSubjectOf(kind, subject)) sorted.delete(kind);
        }
        await joinAgain(some);
      } catch (cause) {
        for (const subject of some) stale.add(subject);
        throw cause;
      }
    }
  }

  for (const kind of keptKinds) {
    const subjects = await store.subjects(kind);
    for (let from = 0; from < subjects.length; from += ledgersInOneRead) {
      for (const [subject, entries] of await store.ledgers(subjects.slice(from, from + ledgersInOneRead))) {
        records.set(subject, recordOf(subject, entries));
      }
      await nextTurn();
    }
  }
  await joinAgain([...records.keys()]);

  return {
    of: async (kind, id) => {
      await refresh();
      const wanted = keptBy.get(subject(kind, id)) ?? subject(kind, id);
      return together.get(wanted) ?? records.get(wanted) ?? recordOf(wanted, []);
    },
    all: async (kind) => {
      await refresh();
      const known = sorted.get(kind);
      if (known !== undefined) return known;
      const made = [...records.values()]
        .filter((record) => isSubjectOf(kind, record.subject) && !keptBy.has(record.subject))
        .map((record) => together.get(record.subject) ?? record)
        .toSorted((a, b) => (a.subject < b.subject ? -1 : 1));
      sorted.set(kind, made);
      return made;
    },
    close: stop,
  };
}

/** Every entry that a record was folded from, in the order of writing. */
export async function entriesOf(store: Pick<Store, 'ledgers'>, record: SubjectRecord): Promise<readonly Entry[]> {
  const subjects = [record.subject, ...(record.together ?? []).map(({ patient }) => patientSubject(patient))];
  const ledgers = await store.ledgers(subjects);
  return inOrderOfWriting(subjects.map((of) => ledgers.get(of) ?? []));
}
