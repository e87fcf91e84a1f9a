/**
 * The two things done to the notes as a whole: a ledger expired, an older copy accepted. Each is written down as an act of
 * its own, so that the chain of commits covers it.
 */
import type { Entry, Instant, Subject } from '@twelvemonth/clinical';
import { canonicalText } from './canonical-text.ts';
import type { ActRecord } from './commit-chain.ts';
import type { Expiry, StoreRefusal } from './contract.ts';
import { sha256 } from './digest.ts';
import { entryId } from './sealing.ts';

export type CustodyRecord = { readonly record: ActRecord; readonly body: string };

export const expiryRecord = (subject: Subject, ledger: readonly Entry[], { by, reason, at }: Expiry): CustodyRecord => {
  const body = canonicalText({
    subject,
    entries: ledger.length,
    lastHash: ledger.at(-1)?.hash,
    by: [...by],
    reason,
    at,
  });
  return { body, record: { id: expiryActId(subject), contentHash: sha256(body), wrote: [] } };
};

export const expiryActId = (subject: Subject): string => entryId(`expiry of ${subject}`, 0);

export function refusedExpiry(ledger: readonly Entry[], { by, reason }: Expiry): StoreRefusal | undefined {
  if (by[0] === by[1] || by.includes(''))
    return { name: 'one-person', says: 'Removing notes at the end of retention takes two different people.' };
  if (reason.trim() === '') return { name: 'no-reason', says: 'Say why these notes may go.' };
  if (ledger.length === 0) return { name: 'no-such-ledger', says: 'There are no notes of this name.' };
  return undefined;
}

/** Who accepted an older or unvouched copy, and why. */
export type Acceptance = { readonly by: string; readonly reason: string; readonly at: Instant };

export const acceptanceRecord = (acceptance: Acceptance, commit: number, says: string): CustodyRecord => {
  const body = canonicalText({ ...acceptance, afterCommit: commit, says });
  return { body, record: { id: acceptanceActId(commit + 1), contentHash: sha256(body), wrote: [] } };
};

/** Named by the number of its own commit. */
export const acceptanceActId = (commit: number): string => entryId(`restore accepted as commit ${commit}`, 0);
