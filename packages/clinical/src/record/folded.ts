/** The record of a ledger, folded once: kept for as long as its list of entries is. Lists of entries are never changed. */
import type { Entry } from '../ledger/entry.ts';
import type { Subject } from '../ledger/subject.ts';
import { recordOf } from './fold.ts';
import type { SubjectRecord } from './patient-record.ts';

const folded = new WeakMap<readonly Entry[], SubjectRecord>();

/** Folding the same list twice gives the first fold. A list that has grown all the same is folded again. */
export function recordOfEntries(of: Subject, entries: readonly Entry[]): SubjectRecord {
  const known = folded.get(entries);
  if (known !== undefined && known.subject === of && known.lastSeq === (entries[entries.length - 1]?.seq ?? 0))
    return known;
  const record = recordOf(of, entries);
  folded.set(entries, record);
  return record;
}
