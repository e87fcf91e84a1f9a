/** Ledgers at hand for questions about the past: the service's own are read once, a person's with those read in them. */
import { type Entry, type LedgerOf, type Subject, patientSubject, readInThese, recordOf } from '@twelvemonth/clinical';
import type { StoreReader } from './contract.ts';

/** Units, protocols and sessions: few and read again and again. */
export async function ledgersOfService(reader: StoreReader): Promise<ReadonlyMap<Subject, readonly Entry[]>> {
  const subjects = [
    ...(await reader.subjects('unit')),
    ...(await reader.subjects('protocol')),
    ...(await reader.subjects('session')),
  ];
  return reader.ledgers(subjects);
}

/** A person's notes, with the other notes that are read in them, beside those of the service. */
export async function ledgersOfPerson(
  reader: StoreReader,
  of: Subject,
  service: ReadonlyMap<Subject, readonly Entry[]>,
): Promise<LedgerOf> {
  const own = await reader.ledger(of);
  const others = await reader.ledgers(readInThese(recordOf(of, own)).map(patientSubject));
  return (one) => (one === of ? own : (others.get(one) ?? service.get(one)));
}
