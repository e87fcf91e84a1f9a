/** The ledgers handed to a decision, folded. */
import type { Entry } from '../ledger/entry.ts';
import { type Subject, subject } from '../ledger/subject.ts';
import { recordOfLedgers } from '../record/folded.ts';
import type { SubjectRecord } from '../record/patient-record.ts';
import { patientSubject } from '../record/together.ts';
import type { Surroundings } from './surroundings.ts';

export const recordIn = (now: Surroundings, of: Subject): SubjectRecord =>
  recordOfLedgers(of, (one) => now.ledgers.get(one));
export const patientIn = (now: Surroundings, patient: string): SubjectRecord =>
  recordIn(now, subject('patient', patient));
export const sessionIn = (now: Surroundings, session: string): SubjectRecord =>
  recordIn(now, subject('session', session));

/** An entry as it was written, in these notes or in those that are read in them. */
export function entryIn(now: Surroundings, record: SubjectRecord, id: string): Entry | undefined {
  for (const of of [record.subject, ...(record.together ?? []).map(({ patient }) => patientSubject(patient))]) {
    const found = now.ledgers.get(of)?.find((entry) => entry.id === id);
    if (found !== undefined) return found;
  }
  return undefined;
}
