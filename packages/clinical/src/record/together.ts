/**
 * The notes of one person that were begun twice, read as one: the kept notes with the other ones in the order of writing.
 * Both ledgers stay as they are, so that they can be read apart again at any time.
 */
import type { Entry } from '../ledger/entry.ts';
import { type Subject, subjectId } from '../ledger/subject.ts';
import { shortDate } from '../calendar/day.ts';
import type { KindName } from '../kinds/index.ts';
import { type AsOf, recordOf } from './fold.ts';
import {
  type Fact,
  type RecordProblem,
  type SubjectRecord,
  type TogetherWith,
  byKind,
  factsOf,
} from './patient-record.ts';
import { readInThese } from './same-person.ts';

/** Entries of the ledger of a patient; undefined: not at hand. */
export type LedgerOf = (of: Subject) => readonly Entry[] | undefined;

export const patientSubject = (patient: string): Subject => `patient/${patient}`;

/** All entries that are read as one, in the order of writing. */
export const inOrderOfWriting = (ledgers: readonly (readonly Entry[])[]): readonly Entry[] =>
  ledgers.length === 1
    ? (ledgers[0] ?? [])
    : ledgers
        .flat()
        .toSorted((a, b) => (a.recordedAt < b.recordedAt ? -1 : a.recordedAt > b.recordedAt ? 1 : a.seq - b.seq));

/**
 * The record of these notes with those that are read in them, as known then. Facts are numbered in the order of writing over
 * all of them; `lastSeq` stays the last number of these notes alone.
 */
export function recordTogether(of: Subject, own: readonly Entry[], ledgerOf: LedgerOf, asOf: AsOf = {}): SubjectRecord {
  const alone = recordOf(of, own, asOf);
  const others = readInThese(alone).flatMap((patient) => {
    const entries = ledgerOf(patientSubject(patient));
    return entries === undefined ? [] : [{ patient, entries }];
  });
  return others.length === 0 ? alone : readAsOne(alone, own, others, asOf);
}

function readAsOne(
  alone: SubjectRecord,
  own: readonly Entry[],
  others: readonly { readonly patient: string; readonly entries: readonly Entry[] }[],
  asOf: AsOf,
): SubjectRecord {
  const written = inOrderOfWriting([own, ...others.map(({ entries }) => entries)]);
  const owner = new Map(written.map(({ id, subject }) => [id, subject]));
  const whole = recordOf(
    alone.subject,
    written.map((entry, index) => ({ ...entry, seq: index + 1 })),
    asOf,
  );
  const isOwn = ({ id }: Fact): boolean => owner.get(id) === alone.subject;
  const problems: RecordProblem[] = [...whole.problems];
  const told: Fact<'dose'>[] = factsOf(whole, 'dose').filter(isOwn);
  const all = whole.all.filter((fact) => {
    if (isOwn(fact)) return true;
    if (keptSays.has(fact.kind) || (fact.kind === 'triage' && (fact as Fact<'triage'>).body.outcome === 'returned'))
      return false;
    if (fact.kind === 'same-person') return (fact as Fact<'same-person'>).body.other !== subjectId(alone.subject);
    if (fact.kind !== 'dose') return true;
    return countsOnce(fact as Fact<'dose'>, told, problems);
  });
  return {
    ...whole,
    lastSeq: alone.lastSeq,
    facts: byKind(all),
    all,
    problems,
    together: others.map(({ patient, entries }) =>
      togetherWith(patient, recordOf(patientSubject(patient), entries, asOf)),
    ),
  };
}

/** Who the person is, and how care ended or was handed on, the kept notes say: another file closed ends nobody's care. */
const keptSays: ReadonlySet<KindName> = new Set([
  'identity',
  'closed',
  'reopened',
  'transfer-out',
  'transfer-acknowledged',
  'cannot-be-reached',
]);

/** A dose that both notes tell of is one dose: the same medicine on the same day. */
function countsOnce(dose: Fact<'dose'>, told: Fact<'dose'>[], problems: RecordProblem[]): boolean {
  const same = told.find(({ on, body }) => on === dose.on && body.medicine === dose.body.medicine);
  if (same === undefined) {
    told.push(dose);
    return true;
  }
  const differ = (['batch', 'partMilliliters', 'setting', 'minutes'] as const).filter(
    (field) => same.body[field] !== dose.body[field],
  );
  if (differ.length > 0) {
    const what = differ.map((field) => (field === 'partMilliliters' ? 'volume' : field)).join(', ');
    problems.push({
      entry: dose.id,
      seq: dose.seq,
      says: `both notes tell of ${dose.body.medicine} on ${shortDate(dose.on)} and differ in: ${what}. It is counted once`,
    });
  }
  return false;
}

const togetherWith = (patient: string, record: SubjectRecord): TogetherWith => ({
  patient,
  identities: factsOf(record, 'identity').map(({ body }) => body),
});
