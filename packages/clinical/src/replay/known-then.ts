/** What was known at a moment in the past: a person's notes, the unit where they were, its calendar and its protocol. */
import { type Entry, type Instant } from '../ledger/entry.ts';
import { type Subject, subject } from '../ledger/subject.ts';
import { protocolsInForce } from '../protocol/in-force.ts';
import type { DecisionContext } from '../readiness/context.ts';
import { recordOf } from '../record/fold.ts';
import type { SubjectRecord } from '../record/patient-record.ts';
import { type LedgerOf, recordTogether } from '../record/together.ts';
import { unitOfPatient } from '../standing/standing.ts';
import { unitOf } from '../unit/unit.ts';
import type { Day } from '../calendar/day.ts';
import { sessionOf } from '../visit/session-list.ts';
import { visitOn } from '../visit/visit.ts';

/** The notes as they were before an entry: nothing written with it or after it. */
export const notesBefore = (of: Subject, own: readonly Entry[], entry: Entry, ledgerOf: LedgerOf): SubjectRecord =>
  recordTogether(
    of,
    own.filter(({ seq, act }) => seq < entry.seq && act !== entry.act),
    ledgerOf,
    { knownAt: entry.recordedAt },
  );

/** The unit whose protocol decided on a day: the one of the session they came to, else their own. */
export function unitThen(record: SubjectRecord, on: Day, ledgerOf: LedgerOf): string {
  const session = visitOn(record, on)?.arrived.body.session;
  const list = session === undefined ? undefined : subject('session', session);
  const here = list === undefined ? undefined : sessionOf(recordOf(list, ledgerOf(list) ?? []))?.unit;
  return here ?? unitOfPatient(record);
}

/** Contexts as known at moments, each made once: units and protocols change far more rarely than notes are written. */
export type ContextsThen = (unit: string, knownAt: Instant, ledgerOf: LedgerOf) => DecisionContext | undefined;

export function contextsThen(): ContextsThen {
  const known = new Map<string, DecisionContext | undefined>();
  return (id, knownAt, ledgerOf) => {
    const [unitSubject, protocolSubject] = [subject('unit', id), subject('protocol', id)];
    const by = (of: Subject): readonly Entry[] =>
      (ledgerOf(of) ?? []).filter(({ recordedAt }) => recordedAt <= knownAt);
    const [unitEntries, protocolEntries] = [by(unitSubject), by(protocolSubject)];
    const key = `${id} ${unitEntries.length} ${protocolEntries.length}`;
    if (!known.has(key)) {
      const unit = unitOf(recordOf(unitSubject, unitEntries));
      known.set(
        key,
        unit === undefined
          ? undefined
          : { calendar: unit.calendar, protocols: protocolsInForce(recordOf(protocolSubject, protocolEntries)) },
      );
    }
    return known.get(key);
  };
}
