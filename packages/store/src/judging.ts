/**
 * Whether an act may be written, given the ledgers as they are now. Pure; both databases ask it inside the write, while
 * the ledgers cannot change.
 */
import type { Draft, Entry, Subject } from '@twelvemonth/clinical';
import { canonicalText } from './canonical-text.ts';
import type { ActRequest, Decision, StoreRefusal } from './contract.ts';
import { lawfulSubject } from './sealing.ts';

export type Judgement<Refusal extends StoreRefusal> =
  | { readonly drafts: readonly Draft[] }
  | { readonly outcome: 'refused'; readonly refusals: readonly [Refusal, ...Refusal[]] }
  | { readonly outcome: 'ledger-moved-on'; readonly missed: readonly Entry[] };

/** Every ledger an act touches, once each, in the ascending order in which they are locked. */
export const subjectsOf = (request: Pick<ActRequest, 'subjects' | 'seen'>): Subject[] =>
  [...new Set([...request.subjects, ...(Object.keys(request.seen ?? {}) as Subject[])])].map(lawfulSubject).toSorted();

/**
 * Decides on the ledgers as they are. If the sender had not seen the end of one of them, its decision still stands when
 * none of the entries it missed is of a kind it read and it would have decided the same without them. An act that names
 * no kinds is taken to have read every kind.
 */
export function judge<Refusal extends StoreRefusal>(
  request: ActRequest<Refusal>,
  ledgers: ReadonlyMap<Subject, readonly Entry[]>,
): Judgement<Refusal> {
  const seen = new Map(Object.entries(request.seen ?? {}) as [Subject, number][]);
  const asSeen = new Map<Subject, readonly Entry[]>();
  const missed: Entry[] = [];
  let sawMoreThanThereIs = false;
  for (const [subject, entries] of ledgers) {
    const upTo = seen.get(subject) ?? entries.length;
    asSeen.set(subject, entries.slice(0, upTo));
    missed.push(...entries.slice(upTo));
    // Only after an older copy was put back: what the sender decided on is gone.
    if (upTo > entries.length) sawMoreThanThereIs = true;
  }
  if (sawMoreThanThereIs) return { outcome: 'ledger-moved-on', missed };
  if (missed.length === 0) return asJudgement(request.decide(ledgers));
  if (missed.some((entry) => request.readKinds?.includes(entry.kind) ?? true))
    return { outcome: 'ledger-moved-on', missed };
  const now = request.decide(ledgers);
  return canonicalText(request.decide(asSeen)) === canonicalText(now)
    ? asJudgement(now)
    : { outcome: 'ledger-moved-on', missed };
}

const asJudgement = <Refusal extends StoreRefusal>(decision: Decision<Refusal>): Judgement<Refusal> =>
  'drafts' in decision ? decision : { outcome: 'refused', refusals: decision.refusals };
