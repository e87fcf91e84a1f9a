/**
 * The record as a pure fold of list-to-list passes over a ledger: known by then, upgraded, withdrawn, amended, ordered,
 * grouped. It never throws on data: what cannot be read becomes a problem with its place.
 */
import { type Day, parseDayAtStart } from '../calendar/day.ts';
import { isKindName } from '../kinds/index.ts';
import type { Entry, Instant, Uuid } from '../ledger/entry.ts';
import type { Subject } from '../ledger/subject.ts';
import { type Fact, type RecordProblem, type SubjectRecord, byKind, nothingKept } from './patient-record.ts';
import { sameDayRank } from './same-day-order.ts';
import { unreadableShape, upgraded } from './upgrade.ts';

export type AsOf = {
  /** Leave out what was written after this moment: what did we know then? */
  readonly knownAt?: Instant;
  /** Leave out what was not yet true on this day. */
  readonly on?: Day;
};

function read(entry: Entry, problems: RecordProblem[]): Fact | undefined {
  const problem = (says: string): undefined => {
    problems.push({ entry: entry.id, seq: entry.seq, says });
    return undefined;
  };
  if (!isKindName(entry.kind)) return problem(`a kind this version does not know: ${entry.kind}`);
  const on = parseDayAtStart(entry.effectiveAt);
  if (on === undefined) return problem(`its date cannot be read: ${entry.effectiveAt}`);
  const unreadable = unreadableShape(entry.kind, entry.shape);
  if (unreadable !== undefined) return problem(unreadable);
  return {
    id: entry.id,
    seq: entry.seq,
    act: entry.act,
    kind: entry.kind,
    on,
    at: entry.effectiveAt.length > 10 ? entry.effectiveAt : undefined,
    body: upgraded(entry.kind, entry.shape, entry.body) as Fact['body'],
    author: entry.author,
    recordedAt: entry.recordedAt,
    first: entry.id,
    firstSeq: entry.seq,
  };
}

function withdrawnIds(facts: readonly Fact[], problems: RecordProblem[]): Set<Uuid> {
  const withdrawn = new Set<Uuid>();
  if (!facts.some(({ kind }) => kind === 'withdrawal')) return withdrawn;
  const byId = new Map(facts.map((fact) => [fact.id, fact]));
  for (const fact of facts) {
    if (fact.kind !== 'withdrawal') continue;
    // A body of the wrong shape must become a problem, not an exception.
    const target = (fact.body as { entry?: Uuid } | null | undefined)?.entry;
    const says =
      target === undefined || !byId.has(target)
        ? 'withdraws an entry that is not in these notes'
        : byId.get(target)?.kind === 'withdrawal'
          ? 'withdraws a withdrawal: what that voided stays so until it is written again'
          : undefined;
    if (says !== undefined) problems.push({ entry: fact.id, seq: fact.seq, says });
    else if (target !== undefined) withdrawn.add(target);
  }
  return withdrawn;
}

/** Lawful amendments only: an earlier entry of these notes, of the same kind. Others are reported and do not count. */
function lawful(
  facts: readonly Fact[],
  entries: readonly Entry[],
  problems: RecordProblem[],
): Map<Uuid, Uuid | undefined> {
  const links = new Map<Uuid, Uuid | undefined>();
  if (!entries.some(({ amends }) => amends !== undefined)) return links;
  const byId = new Map(facts.map((fact) => [fact.id, fact]));
  for (const { id, amends } of entries) {
    const fact = byId.get(id);
    if (amends === undefined || fact === undefined) continue;
    const target = byId.get(amends);
    const says =
      target === undefined || target.seq >= fact.seq
        ? 'corrects an entry that is not in these notes'
        : target.kind === fact.kind
          ? undefined
          : 'corrects an entry of another kind';
    if (says !== undefined) problems.push({ entry: id, seq: fact.seq, says });
    links.set(id, says === undefined ? amends : undefined);
  }
  return links;
}

/**
 * The latest amendment of each chain stands in for its first entry; the chain's first id stays its name. What corrects
 * nothing does not count, and nor does what corrects it. Withdrawing any link voids the whole chain: the value before it was
 * found wrong once, so it does not come back unread.
 */
function standing(
  facts: readonly Fact[],
  links: ReadonlyMap<Uuid, Uuid | undefined>,
  withdrawn: ReadonlySet<Uuid>,
): readonly Fact[] {
  if (links.size === 0) return withdrawn.size === 0 ? facts : facts.filter(({ id }) => !withdrawn.has(id));
  const firstOf = (id: Uuid): Uuid | undefined => {
    let first: Uuid | undefined = id;
    while (first !== undefined && links.has(first)) first = links.get(first);
    return first;
  };
  const voided = new Set([...withdrawn].map(firstOf));
  const newest = new Map<Uuid, Fact>();
  for (const fact of facts) {
    const first = firstOf(fact.id);
    if (first === undefined || voided.has(first)) continue;
    const firstSeq = newest.get(first)?.firstSeq ?? fact.firstSeq;
    newest.set(first, first === fact.id ? fact : { ...fact, first, firstSeq });
  }
  return [...newest.values()];
}

const inOrder = (a: Fact, b: Fact): number =>
  a.on - b.on ||
  sameDayRank(a.kind) - sameDayRank(b.kind) ||
  (a.at !== undefined && b.at !== undefined ? compareMoments(a.at, b.at) : 0) ||
  a.seq - b.seq;

/** Same day, so same place and all but always the same offset: then the texts sort as the moments do. */
const compareMoments = (a: string, b: string): number =>
  a.slice(19) === b.slice(19) ? (a < b ? -1 : a > b ? 1 : 0) : Date.parse(a) - Date.parse(b);

/** Notes are mostly written in the order of their days: then there is nothing to sort. */
function ordered(facts: readonly Fact[]): readonly Fact[] {
  for (let index = 1; index < facts.length; index += 1) {
    const [before, fact] = [facts[index - 1], facts[index]];
    if (before !== undefined && fact !== undefined && before.on >= fact.on && inOrder(before, fact) > 0)
      return facts.toSorted(inOrder);
  }
  return facts;
}

/** What we know of a subject, from its entries in order of seq. */
export function recordOf(subject: Subject, entries: readonly Entry[], asOf: AsOf = {}): SubjectRecord {
  const problems: RecordProblem[] = [];
  const known =
    asOf.knownAt === undefined ? entries : entries.filter((entry) => entry.recordedAt <= (asOf.knownAt ?? ''));
  const facts: Fact[] = [];
  for (const entry of known) {
    const fact = read(entry, problems);
    if (fact !== undefined) facts.push(fact);
  }
  const counted = standing(facts, lawful(facts, known, problems), withdrawnIds(facts, problems));
  const { on } = asOf;
  const all = ordered(on === undefined ? counted : counted.filter((fact) => fact.on <= on));
  return {
    subject,
    lastSeq: known[known.length - 1]?.seq ?? 0,
    facts: byKind(all),
    all,
    problems,
    kept: nothingKept(),
  };
}
