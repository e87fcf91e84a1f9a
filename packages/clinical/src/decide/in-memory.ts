/**
 * Acts carried out on ledgers in memory: the demo and the tests write through `decide` as the server does, without a
 * database. Ids come from the act's own id and the place in it; hashes are left empty for a store to fill.
 */
import type { Author, Draft, Entry, Instant, Uuid } from '../ledger/entry.ts';
import { type Subject } from '../ledger/subject.ts';
import type { Act } from './act.ts';
import { decide } from './decide.ts';
import type { Refusal } from './refusal.ts';
import type { Surroundings } from './surroundings.ts';

/** Ledgers by subject. A ledger's list is replaced when it grows, never changed. */
export type Ledgers = Map<Subject, readonly Entry[]>;

export type Signed = { readonly id: Uuid; readonly act: Act; readonly at: Instant };

/** Decides an act and, unless it is refused, writes its drafts. Answers with the refusals; none: it was written. */
export function carryOut(ledgers: Ledgers, signed: Signed, now: Surroundings): readonly Refusal[] {
  const decided = decide(signed.act, now);
  if ('refusals' in decided) return decided.refusals;
  write(ledgers, decided.drafts, signed, now.by);
  return [];
}

/** Appends drafts; every entry is recorded strictly later than the one before it in its ledger. */
export function write(
  ledgers: Ledgers,
  drafts: readonly Draft[],
  { id, at }: Pick<Signed, 'id' | 'at'>,
  author: Author,
): void {
  drafts.forEach((draft, index) => {
    const entries = ledgers.get(draft.subject) ?? [];
    const last = entries[entries.length - 1];
    const entry: Entry = {
      ...draft,
      id: entryId(id, index),
      act: id,
      seq: (last?.seq ?? 0) + 1,
      recordedAt: last === undefined || last.recordedAt < at ? at : aMillisecondAfter(last.recordedAt),
      author,
      previousHash: '',
      hash: '',
    };
    ledgers.set(draft.subject, [...entries, entry]);
  });
}

const aMillisecondAfter = (at: Instant): Instant => new Date(Date.parse(at) + 1).toISOString();

/** The act's id with its last four signs counted on: distinct as long as acts' ids leave them at 0000. */
const entryId = (act: Uuid, index: number): Uuid => `${act.slice(0, -4)}${(index + 1).toString(16).padStart(4, '0')}`;
