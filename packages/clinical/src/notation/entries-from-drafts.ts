/**
 * Drafts as entries, for tests and for reading a case from the command line: ids from the labels, moments of writing one
 * second apart. The hashes are empty: a ledger made this way is never stored.
 */
import type { Entry, Instant } from '../ledger/entry.ts';
import { type NotedDraft, usualAuthor } from './draft-line.ts';

const stepMilliseconds = 1000;

export function entriesFromDrafts(drafts: readonly NotedDraft[], { start }: { readonly start: Instant }): Entry[] {
  const taken = new Set(drafts.flatMap((draft) => draft.id ?? []));
  const seqs = new Map<string, number>();
  let at = Date.parse(start);
  return drafts.map((draft, index) => {
    const seq = (seqs.get(draft.subject) ?? 0) + 1;
    seqs.set(draft.subject, seq);
    let id = draft.id ?? `e${index + 1}`;
    while (draft.id === undefined && taken.has(id)) id = `${id}-`;
    taken.add(id);
    at = draft.recordedAt === undefined ? at + stepMilliseconds : Date.parse(draft.recordedAt);
    return {
      ...draft,
      id,
      act: `act-${index + 1}`,
      seq,
      recordedAt: new Date(at).toISOString(),
      author: draft.author ?? usualAuthor(draft.kind),
      previousHash: '',
      hash: '',
    };
  });
}
