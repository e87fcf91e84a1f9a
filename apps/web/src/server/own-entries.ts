/** What this screen wrote itself has been seen here: an act of one form is no news to the form beside it. */
import type { ActAnswer } from '@twelvemonth/exchange';

const written = new Map<string, Set<number>>();

export function noteOwnEntries(entries: readonly Pick<ActAnswer['entries'][number], 'subject' | 'seq'>[]): void {
  for (const { subject, seq } of entries) {
    const seqs = written.get(subject) ?? new Set<number>();
    written.set(subject, seqs.add(seq));
  }
}

/** The last seq seen of each ledger, carried on over what this screen wrote right after it. */
export const withOwnEntries = (seen: Readonly<Record<string, number>>): Readonly<Record<string, number>> =>
  Object.fromEntries(
    Object.entries(seen).map(([subject, from]) => {
      const own = written.get(subject);
      let seq = from;
      while (own?.has(seq + 1) === true) seq += 1;
      return [subject, seq];
    }),
  );
