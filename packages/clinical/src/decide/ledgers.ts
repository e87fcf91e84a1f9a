/** The ledgers handed to a decision, folded. */
import type { Entry } from '../ledger/entry.ts';
import { type Subject, subject } from '../ledger/subject.ts';
import { recordOfEntries } from '../record/folded.ts';
import type { SubjectRecord } from '../record/patient-record.ts';
import type { Surroundings } from './surroundings.ts';

const none: readonly Entry[] = [];

export const recordIn = (now: Surroundings, of: Subject): SubjectRecord =>
  recordOfEntries(of, now.ledgers.get(of) ?? none);
export const patientIn = (now: Surroundings, patient: string): SubjectRecord =>
  recordIn(now, subject('patient', patient));
export const sessionIn = (now: Surroundings, session: string): SubjectRecord =>
  recordIn(now, subject('session', session));
