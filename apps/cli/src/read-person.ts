/** A person's notes as everyone reads them: with the other notes of the same person that are read in them. */
import {
  type AsOf,
  type Entry,
  type Subject,
  type SubjectRecord,
  patientSubject,
  readIn,
  readInThese,
  recordOf,
  recordTogether,
} from '@twelvemonth/clinical';
import type { StoreReader } from '@twelvemonth/store';

export type NotesRead = {
  readonly record: SubjectRecord;
  /** Of these notes, and of those read in them. */
  readonly ledgers: readonly (readonly Entry[])[];
};

/** `own` may leave entries out; what the others held is cut by `asOf` alone. */
export async function readPerson(
  reader: StoreReader,
  of: Subject,
  own: readonly Entry[],
  asOf: AsOf = {},
): Promise<NotesRead> {
  const others = readInThese(recordOf(of, own, asOf)).map(patientSubject);
  const ledgers = await reader.ledgers(others);
  return {
    record: recordTogether(of, own, (one) => ledgers.get(one), asOf),
    ledgers: [own, ...others.map((one) => ledgers.get(one) ?? [])],
  };
}

/** The notes that are kept, where those asked for are read in others. */
export async function keptNotes(reader: StoreReader, of: Subject): Promise<Subject> {
  const kept = readIn(recordOf(of, await reader.ledger(of)));
  return kept === undefined ? of : patientSubject(kept);
}
