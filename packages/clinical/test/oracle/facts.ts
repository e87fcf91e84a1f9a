/**
 * The counting facts of a ledger, and the facts that steps would add. Written from docs/readiness.md and the entry kinds
 * alone; the product's own fold is not used.
 */
import type { BodyOfKind, Entry, KindName } from '@twelvemonth/clinical';
import { dayNumber } from './dates.ts';

export type OracleFact<Kind extends KindName = KindName> = {
  readonly kind: Kind;
  readonly on: number;
  readonly seq: number;
  /** Of the first entry of its chain of corrections. */
  readonly firstSeq: number;
  readonly body: BodyOfKind<Kind>;
  /** Its own id and those of the entries it corrects. */
  readonly ids: readonly string[];
  /** First day on which it may be used: a step's result is not there before its day. */
  readonly from: number;
  /** Results of an assumed draw are signed on the day they may be used. */
  readonly signed?: boolean;
  /** A value never measured, assumed good: it has no number. */
  readonly good?: boolean;
};

/** Not withdrawn, nor of a chain of corrections of which any link was withdrawn; as corrected; in order of date then sequence. */
export function countingFacts(entries: readonly Entry[]): OracleFact[] {
  const withdrawn = new Set(
    entries.filter((entry) => entry.kind === 'withdrawal').map((entry) => (entry.body as { entry: string }).entry),
  );
  const kept = entries.filter((entry) => entry.kind !== 'withdrawal');
  const byId = new Map(kept.map((entry) => [entry.id, entry]));
  const bySeq = (ids: readonly string[]): number => byId.get(ids[ids.length - 1] ?? '')?.seq ?? 0;
  const facts = kept.flatMap((entry): OracleFact[] => {
    const ids = [entry.id];
    for (let link = entry.amends; link !== undefined; link = byId.get(link)?.amends) {
      // What corrects an entry that is not here corrects nothing.
      if (!byId.has(link)) return [];
      ids.push(link);
    }
    const on = dayNumber(entry.effectiveAt.slice(0, 10));
    return [
      {
        kind: entry.kind as KindName,
        on,
        seq: entry.seq,
        firstSeq: bySeq(ids),
        body: entry.body as OracleFact['body'],
        ids,
        from: on,
      },
    ];
  });
  const rootOf = (fact: OracleFact): string => fact.ids[fact.ids.length - 1] ?? '';
  const voided = new Set(facts.filter((fact) => fact.ids.some((id) => withdrawn.has(id))).map(rootOf));
  // A chain of corrections counts once, as its last link.
  const lastOfChain = new Map<string, OracleFact>();
  for (const fact of facts) {
    const root = rootOf(fact);
    if (voided.has(root)) continue;
    const known = lastOfChain.get(root);
    if (known === undefined || fact.seq > known.seq) lastOfChain.set(root, fact);
  }
  return [...lastOfChain.values()].toSorted(inOrder);
}

export const inOrder = (a: OracleFact, b: OracleFact): number => a.on - b.on || a.seq - b.seq;
