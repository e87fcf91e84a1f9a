/**
 * Acts and commits. A commit is what reached the disk together; its hash covers its acts, the entries they wrote and the
 * commit before it, so the last commit stands for everything ever written.
 */
import type { Subject, Uuid } from '@twelvemonth/clinical';
import { lengthPrefixed } from './canonical-text.ts';
import { beforeTheFirst, sha256 } from './digest.ts';

/** Where an act's entry went and the hash it had: kept even after a ledger's time is over. */
export type Written = { readonly subject: Subject; readonly seq: number; readonly hash: string };

/** One act as it is looked up when it is sent again. `wrote` is in the order of its drafts. */
export type ActRecord = { readonly id: Uuid; readonly contentHash: string; readonly wrote: readonly Written[] };

/** The end of the chain: number and hash of the last commit. */
export type CommitTail = { readonly commit: number; readonly hash: string };

export const noCommitYet: CommitTail = { commit: 0, hash: beforeTheFirst };

export const nextCommit = (last: CommitTail, acts: readonly ActRecord[]): CommitTail => {
  const commit = last.commit + 1;
  const parts = acts.flatMap((act) => [act.id, act.contentHash, wroteText(act.wrote)]);
  return { commit, hash: sha256(lengthPrefixed([last.hash, String(commit), ...parts])) };
};

export const wroteText = (wrote: readonly Written[]): string =>
  JSON.stringify(wrote.map(({ subject, seq, hash }) => [subject, seq, hash]));

export const parseWrote = (text: string): Written[] =>
  (JSON.parse(text) as [Subject, number, string][]).map(([subject, seq, hash]) => ({ subject, seq, hash }));
