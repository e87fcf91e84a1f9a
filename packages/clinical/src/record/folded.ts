/** The record of a ledger, folded once: kept for as long as its list of entries is. Lists of entries are never changed. */
import type { Entry } from '../ledger/entry.ts';
import type { Subject } from '../ledger/subject.ts';
import { recordOf } from './fold.ts';
import { type SubjectRecord, factsOf } from './patient-record.ts';
import { readInThese } from './same-person.ts';
import { type LedgerOf, patientSubject, recordTogether } from './together.ts';

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

const together = new WeakMap<
  readonly Entry[],
  { readonly others: readonly (readonly Entry[] | undefined)[]; readonly record: SubjectRecord }
>();

/** The same, with the notes that are read in these: folded once for as long as none of the lists is another one. */
export function recordOfLedgers(of: Subject, ledgerOf: LedgerOf): SubjectRecord {
  const entries = ledgerOf(of) ?? none;
  const alone = recordOfEntries(of, entries);
  if (factsOf(alone, 'same-person').length === 0) return alone;
  const others = readInThese(alone).map((patient) => ledgerOf(patientSubject(patient)));
  if (others.length === 0) return alone;
  const known = together.get(entries);
  if (known !== undefined && known.others.length === others.length && known.others.every((one, i) => one === others[i]))
    return known.record;
  const record = recordTogether(of, entries, ledgerOf);
  together.set(entries, { others, record });
  return record;
}

const none: readonly Entry[] = [];
