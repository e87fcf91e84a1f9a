/**
 * Ledgers the writer used lately, so that an act on a busy ledger does not read it again. Only the one writing process
 * fills it, inside its own transactions; it is dropped as a whole whenever a transaction fails.
 */
import type { Entry, Subject } from '@twelvemonth/clinical';

export type RecentLedgers = {
  readonly of: (subject: Subject, read: (subject: Subject) => readonly Entry[]) => readonly Entry[];
  readonly keep: (subject: Subject, entries: readonly Entry[]) => void;
  readonly forget: () => void;
};

/** `most` bounds the entries held, over all ledgers; the ledger used longest ago goes first. */
export function recentLedgers(most: number): RecentLedgers {
  const held = new Map<Subject, readonly Entry[]>();
  let entries = 0;
  const drop = (subject: Subject): void => {
    entries -= held.get(subject)?.length ?? 0;
    held.delete(subject);
  };
  const keep = (subject: Subject, ledger: readonly Entry[]): void => {
    drop(subject);
    held.set(subject, ledger);
    entries += ledger.length;
    for (const oldest of held.keys()) {
      if (entries <= most || oldest === subject) break;
      drop(oldest);
    }
  };
  return {
    of: (subject, read) => {
      const ledger = held.get(subject) ?? read(subject);
      keep(subject, ledger);
      return ledger;
    },
    keep,
    forget: () => {
      held.clear();
      entries = 0;
    },
  };
}
