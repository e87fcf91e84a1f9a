/**
 * What we know of one subject: its ledger folded. Facts stay close to the entries they came from; everything derived from
 * them (doses of this course, the visit of today, the standing) is read from here by functions of its own.
 */
import type { Day } from '../calendar/day.ts';
import type { BodyOfKind, KindName } from '../kinds/index.ts';
import type { Author, Instant, LocalMoment, Uuid } from '../ledger/entry.ts';
import type { Subject } from '../ledger/subject.ts';
import type { Evidence } from '../requirements/evidence.ts';

/** An entry that counts: amendments applied, withdrawals removed, older shapes upgraded. */
export type Fact<Kind extends KindName = KindName> = {
  readonly id: Uuid;
  readonly seq: number;
  readonly act: Uuid;
  readonly kind: Kind;
  /** The day on which it was true. */
  readonly on: Day;
  /** The moment, where one was said. */
  readonly at: LocalMoment | undefined;
  readonly body: BodyOfKind<Kind>;
  readonly author: Author;
  readonly recordedAt: Instant;
  /** The id of the first entry of a chain of amendments: what others refer to. The fact's own id if never amended. */
  readonly first: Uuid;
  /** The seq of that first entry: since when some value of this fact has stood. */
  readonly firstSeq: number;
};

/** Trouble met while reading a ledger: never thrown, always shown. */
export type RecordProblem = { readonly entry: Uuid; readonly seq: number; readonly says: string };

/** Other notes that are read as part of these: whose they were, and the names and numbers they were kept under. */
export type TogetherWith = { readonly patient: string; readonly identities: readonly BodyOfKind<'identity'>[] };

export type SubjectRecord = {
  readonly subject: Subject;
  /** Seq of the last entry read; 0 if none. */
  readonly lastSeq: number;
  /** Facts of each kind, in the order of the days on which they were true (same day: docs/readiness.md). */
  readonly facts: ReadonlyMap<KindName, readonly Fact[]>;
  /** All facts in that order, whatever their kind. */
  readonly all: readonly Fact[];
  readonly problems: readonly RecordProblem[];
  /** Set where other notes of the same person are read in (record/together.ts). */
  readonly together?: readonly TogetherWith[];
  /** What was picked out of these facts for the day asked about last, kept for the next question (`evidenceOf`). */
  readonly kept: Kept;
};

/** It holds of the very list of facts that it was picked from: a record made from this one picks its own. */
export type Kept = { of: SubjectRecord['all'] | undefined; evidence: Evidence | undefined };

export const nothingKept = (): Kept => ({ of: undefined, evidence: undefined });

const none: readonly never[] = [];

export const factsOf = <Kind extends KindName>(record: SubjectRecord, kind: Kind): readonly Fact<Kind>[] =>
  // Grouped by their own kind.
  (record.facts.get(kind) as unknown as readonly Fact<Kind>[] | undefined) ?? none;

/** What of a record is dated on a day or before: mostly the record itself, for little lies ahead. */
export function upTo(record: SubjectRecord, on: Day): SubjectRecord {
  const newest = record.all[record.all.length - 1];
  if (newest === undefined || newest.on <= on) return record;
  const all = record.all.filter((fact) => fact.on <= on);
  return { ...record, all, facts: byKind(all) };
}

/** Facts of each kind, in the order in which they are given. */
export function byKind(all: readonly Fact[]): SubjectRecord['facts'] {
  const facts = new Map<KindName, Fact[]>();
  for (const fact of all) {
    const known = facts.get(fact.kind);
    if (known === undefined) facts.set(fact.kind, [fact]);
    else known.push(fact);
  }
  return facts;
}

export function latest<Kind extends KindName>(record: SubjectRecord, kind: Kind): Fact<Kind> | undefined {
  const facts = factsOf(record, kind);
  return facts.length === 0 ? undefined : facts[facts.length - 1];
}

/** The fact an id refers to, by its own id or by the id of the entry it amends. */
export const factWithId = (record: SubjectRecord, id: Uuid): Fact | undefined =>
  record.all.find((fact) => fact.id === id || fact.first === id);
