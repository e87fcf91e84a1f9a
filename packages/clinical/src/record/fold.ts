/**
 * The record as a pure fold of list-to-list passes over a ledger: known by then, upgraded, withdrawn, amended, ordered,
 * grouped. It never throws on data: what cannot be read becomes a problem with its place.
 */
import { type Day, parseDay } from '../calendar/day.ts';
import { type KindName, isKindName } from '../kinds/index.ts';
import { type Entry, type Instant, type Uuid, localDate } from '../ledger/entry.ts';
import type { Subject } from '../ledger/subject.ts';
import type { Fact, RecordProblem, SubjectRecord } from './patient-record.ts';
import { sameDayRank } from './same-day-order.ts';
import { upgraded } from './upgrade.ts';

type Mutable = { -readonly [Key in keyof Fact]: Fact[Key] };

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
  const on = parseDay(localDate(entry.effectiveAt));
  if (on === undefined) return problem(`its date cannot be read: ${entry.effectiveAt}`);
  const body = upgraded(entry.kind, entry.shape, entry.body);
  if ('says' in body) return problem(body.says);
  return {
    id: entry.id,
    seq: entry.seq,
    act: entry.act,
    kind: entry.kind,
    on,
    at: entry.effectiveAt.length > 10 ? entry.effectiveAt : undefined,
    body: body.body as Fact['body'],
    author: entry.author,
    recordedAt: entry.recordedAt,
    first: entry.id,
  };
}

function withdrawnIds(facts: readonly Fact[], problems: RecordProblem[]): Set<Uuid> {
  const byId = new Map(facts.map((fact) => [fact.id, fact]));
  const withdrawn = new Set<Uuid>();
  for (const fact of facts) {
    if (fact.kind !== 'withdrawal') continue;
    const target = (fact as Fact<'withdrawal'>).body.entry;
    if (byId.has(target)) withdrawn.add(target);
    else problems.push({ entry: fact.id, seq: fact.seq, says: 'withdraws an entry that is not in these notes' });
  }
  return withdrawn;
}

/** The latest amendment of each chain stands in for its first entry; the chain's first id stays its name. */
function amended(facts: readonly Fact[], amends: ReadonlyMap<Uuid, Uuid>, problems: RecordProblem[]): Fact[] {
  if (amends.size === 0) return [...facts];
  const byId = new Map(facts.map((fact) => [fact.id, fact]));
  const firstOf = (id: Uuid): Uuid => {
    let current = id;
    for (let next = amends.get(current); next !== undefined; next = amends.get(current)) current = next;
    return current;
  };
  const standing = new Map<Uuid, Fact>();
  for (const fact of facts) {
    const target = amends.get(fact.id);
    if (target === undefined) {
      standing.set(fact.id, standing.get(fact.id) ?? fact);
      continue;
    }
    const amendedFact = byId.get(target);
    if (amendedFact === undefined || amendedFact.seq >= fact.seq) {
      problems.push({ entry: fact.id, seq: fact.seq, says: 'corrects an entry that is not in these notes' });
    } else if (amendedFact.kind !== fact.kind) {
      problems.push({ entry: fact.id, seq: fact.seq, says: 'corrects an entry of another kind' });
    } else {
      const first = firstOf(fact.id);
      standing.set(first, { ...fact, first } as Mutable as Fact);
    }
  }
  return [...standing.values()];
}

/** Lawful amendments only: same ledger, earlier, same kind. Others are reported by `amended` and do not count. */
function amendments(entries: readonly Entry[]): Map<Uuid, Uuid> {
  const links = new Map<Uuid, Uuid>();
  for (const entry of entries) if (entry.amends !== undefined) links.set(entry.id, entry.amends);
  return links;
}

const inOrder = (a: Fact, b: Fact): number =>
  a.on - b.on || sameDayRank(a.kind) - sameDayRank(b.kind) || (a.at !== undefined && b.at !== undefined ? compareMoments(a.at, b.at) : 0) || a.seq - b.seq;

/** Same day, so same place and all but always the same offset: then the texts sort as the moments do. */
const compareMoments = (a: string, b: string): number =>
  a.slice(19) === b.slice(19) ? (a < b ? -1 : a > b ? 1 : 0) : Date.parse(a) - Date.parse(b);

/** What we know of a subject, from its entries in order of seq. */
export function recordOf(subject: Subject, entries: readonly Entry[], asOf: AsOf = {}): SubjectRecord {
  const problems: RecordProblem[] = [];
  const known = asOf.knownAt === undefined ? entries : entries.filter((entry) => entry.recordedAt <= (asOf.knownAt ?? ''));
  const facts: Fact[] = [];
  for (const entry of known) {
    const fact = read(entry, problems);
    if (fact !== undefined) facts.push(fact);
  }
  const withdrawn = withdrawnIds(facts, problems);
  const kept = withdrawn.size === 0 ? facts : facts.filter((fact) => !withdrawn.has(fact.id));
  const links = amendments(known);
  for (const id of withdrawn) links.delete(id);
  const counted = amended(kept, links, problems).filter((fact) => asOf.on === undefined || fact.on <= asOf.on);
  const all = counted.toSorted(inOrder);
  const grouped: { [Kind in KindName]?: Fact[] } = {};
  for (const fact of all) (grouped[fact.kind] ??= []).push(fact);
  return {
    subject,
    lastSeq: known[known.length - 1]?.seq ?? 0,
    facts: grouped as SubjectRecord['facts'],
    all,
    problems,
  };
}
