/**
 * One act from request to what is written, given what is already there. Pure; shared by both databases, so that they
 * cannot differ in what "sent twice" or "moved on" means.
 */
import type { Entry, Subject } from '@twelvemonth/clinical';
import { storable } from './canonical-text.ts';
import type { ActRecord } from './commit-chain.ts';
import type { ActOutcome, ActRequest, StoreRefusal } from './contract.ts';
import { sha256 } from './digest.ts';
import { judge } from './judging.ts';
import { sealDrafts, type SealedEntry } from './sealing.ts';

export type Found = { readonly contentHash: string; readonly commit: number; readonly entries: readonly Entry[] };

/** The answer to an act id that is known already. */
export function answerAgain<Refusal extends StoreRefusal>(
  request: ActRequest<Refusal>,
  found: Found,
): ActOutcome<Refusal> {
  if (found.contentHash !== sha256(request.content))
    return { outcome: 'same-id-other-content', entries: found.entries };
  return { outcome: 'already-recorded', entries: found.entries, commit: found.commit };
}

export type NewAct = {
  readonly record: ActRecord;
  readonly sealed: readonly SealedEntry[];
  /** Every ledger it added to, whole, as it is afterwards. */
  readonly grown: ReadonlyMap<Subject, readonly Entry[]>;
};

/** Judges an act whose id is new and seals what it writes. */
export function newAct<Refusal extends StoreRefusal>(
  request: ActRequest<Refusal>,
  ledgers: ReadonlyMap<Subject, readonly Entry[]>,
  isExpired: (subject: Subject) => boolean,
): NewAct | Exclude<ActOutcome<Refusal>, { readonly outcome: 'recorded' }> {
  for (const [subject, entries] of ledgers) {
    if (entries.length === 0 && isExpired(subject)) {
      return {
        outcome: 'ledger-expired',
        says: `The notes of ${subject} were removed at the end of their retention; nothing can be added.`,
      };
    }
  }
  const judgement = judge(request, ledgers);
  if ('outcome' in judgement) return judgement;
  const id = storable(request.id, 'act id');
  const sealed = sealDrafts(
    judgement.drafts,
    { id, by: request.by, at: request.at, subjects: new Set(ledgers.keys()) },
    ledgers,
  );
  const grown = new Map<Subject, Entry[]>();
  for (const { entry } of sealed) {
    const ledger = grown.get(entry.subject) ?? [...(ledgers.get(entry.subject) ?? [])];
    ledger.push(entry);
    grown.set(entry.subject, ledger);
  }
  const wrote = sealed.map(({ entry }) => ({ subject: entry.subject, seq: entry.seq, hash: entry.hash }));
  return { record: { id, contentHash: sha256(request.content), wrote }, sealed, grown };
}
