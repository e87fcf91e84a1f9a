/**
 * Ledgers the writer used lately, with their derived rows, so that an act on a busy ledger does not read them again. Only
 * the one writing process fills it, inside its own transactions; it is dropped as a whole whenever a transaction fails.
 */
import type { Entry, Subject } from '@twelvemonth/clinical';
import type { DerivedRow } from '../contract.ts';

export type KnownLedger = { readonly entries: readonly Entry[]; readonly rows: readonly DerivedRow[] };

export type RecentLedgers = {
  readonly of: (subject: Subject) => KnownLedger;
  readonly keep: (subject: Subject, ledger: KnownLedger) => void;
  readonly forget: () => void;
};

/** `most` bounds the entries held, over all ledgers; the ledger used longest ago goes first. */
export function recentLedgers(most: number, read: (subject: Subject) => KnownLedger): RecentLedgers {
  const held = new Map<Subject, KnownLedger>();
  let size = 0;
  // An empty ledger takes room too.
  const sizeOf = (ledger: KnownLedger | undefined): number => (ledger === undefined ? 0 : ledger.entries.length + 1);
  const drop = (subject: Subject): void => {
    size -= sizeOf(held.get(subject));
    held.delete(subject);
  };
  const keep = (subject: Subject, ledger: KnownLedger): void => {
    drop(subject);
    held.set(subject, ledger);
    size += sizeOf(ledger);
    for (const oldest of held.keys()) {
      if (size <= most || oldest === subject) break;
      drop(oldest);
    }
  };
  return {
    of: (subject) => {
      const ledger = held.get(subject) ?? read(subject);
      keep(subject, ledger);
      return ledger;
    },
    keep,
    forget: () => {
      held.clear();
      size = 0;
    },
  };
}
