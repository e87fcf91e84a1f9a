/** The same surroundings after some lines have been written: lines sent together are checked one after the other. */
import type { Draft, Entry } from '../ledger/entry.ts';
import type { Surroundings } from './surroundings.ts';

export function after(drafts: readonly Draft[], now: Surroundings): Surroundings {
  const ledgers = new Map(now.ledgers);
  for (const draft of drafts) {
    const entries = ledgers.get(draft.subject) ?? [];
    const seq = (entries[entries.length - 1]?.seq ?? 0) + 1;
    const entry: Entry = {
      ...draft,
      id: `not-yet-written-${seq}`,
      act: 'not-yet-written',
      seq,
      recordedAt: now.clock.wall,
      author: now.by,
      previousHash: '',
      hash: '',
    };
    ledgers.set(draft.subject, [...entries, entry]);
  }
  return { ...now, ledgers };
}
