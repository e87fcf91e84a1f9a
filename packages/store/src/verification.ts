/**
 * Reads a whole store and recomputes everything that can be recomputed. Written against a small source of rows, so that
 * both databases are judged by the same code; it trusts no column that it can work out itself.
 */
import { hashedText, type Entry, type Subject } from '@twelvemonth/clinical';
import { nextCommit, noCommitYet, parseWrote, type ActRecord, type CommitTail } from './commit-chain.ts';
import type { DerivedRow, Projection, Verification } from './contract.ts';
import { acceptanceActId, expiryActId } from './custody.ts';
import { derivedChanges } from './derived-rows.ts';
import { beforeTheFirst, sha256 } from './digest.ts';
import { entryOfRow, type EntryRow } from './entry-row.ts';
import { unmirroredPlace } from './mirrored-places.ts';
import { againstDigest } from './tails-digest.ts';

export type StoredAct = {
  readonly commit: number;
  readonly id: string;
  readonly contentHash: string;
  readonly wroteText: string;
};

/** One unmoving view of a store. */
export type VerificationSource = {
  readonly counts: () => Promise<{ readonly entries: number; readonly acts: number; readonly derivedRows: number }>;
  /** Ledgers after a subject, ascending, at most `limit` ledgers, each in seq order. */
  readonly ledgersAfter: (
    after: string,
    limit: number,
  ) => Promise<readonly (readonly [Subject, readonly EntryRow[]])[]>;
  readonly derivedRows: (subjects: readonly Subject[]) => Promise<ReadonlyMap<Subject, readonly DerivedRow[]>>;
  readonly commitsAfter: (commit: number, limit: number) => Promise<readonly CommitTail[]>;
  /** Acts of the commits in a range, in order of commit and position. */
  readonly actsOf: (from: number, until: number) => Promise<readonly StoredAct[]>;
  readonly entriesAt: (
    places: readonly { readonly subject: Subject; readonly seq: number }[],
  ) => Promise<ReadonlyMap<string, EntryRow>>;
  readonly tombstones: () => Promise<ReadonlyMap<Subject, { readonly commit: number; readonly body: string }>>;
  readonly acceptances: () => Promise<readonly { readonly commit: number; readonly body: string }[]>;
  /** What the database says of its own files; undefined if nothing is wrong. */
  readonly ownCheck: () => Promise<string | undefined>;
};

export const placeOfEntry = (of: { readonly subject: Subject; readonly seq: number }): string =>
  `${of.subject} ${of.seq}`;

type FirstBad = Extract<Verification, { readonly ok: false }>['firstBad'];
class Bad extends Error {
  readonly firstBad: FirstBad;
  constructor(firstBad: FirstBad) {
    super(firstBad.says);
    this.firstBad = firstBad;
  }
}

const ledgersAtOnce = 200;
const commitsAtOnce = 200;

export async function verifySource(
  source: VerificationSource,
  projection: Projection,
  progress: (done: number, of: number) => void = () => undefined,
  against?: string,
): Promise<Verification> {
  try {
    const counts = await source.counts();
    const total = counts.entries + counts.acts;
    const ledgers = await verifyLedgers(source, projection, counts, (done) => progress(done, total));
    const tail = await verifyCommits(source, counts, (done) => progress(counts.entries + done, total));
    const differs = against === undefined ? undefined : await againstDigest(source, against);
    if (differs !== undefined) throw new Bad(differs);
    const trouble = await source.ownCheck();
    if (trouble !== undefined) throw new Bad({ says: `The database reports damage: ${trouble}` });
    return { ok: true, entries: counts.entries, ledgers, commit: tail.commit };
  } catch (cause) {
    if (cause instanceof Bad) return { ok: false, firstBad: cause.firstBad };
    // A page so damaged that it cannot be read at all is a finding too, not a crash of the command that looks for it.
    return {
      ok: false,
      firstBad: {
        says: `The database cannot be read to its end: ${cause instanceof Error ? cause.message : String(cause)}`,
      },
    };
  }
}

async function verifyLedgers(
  source: VerificationSource,
  projection: Projection,
  counts: { readonly entries: number; readonly derivedRows: number },
  progress: (entries: number) => void,
): Promise<number> {
  let after = '';
  let ledgers = 0;
  let entries = 0;
  let derivedRows = 0;
  for (;;) {
    const batch = await source.ledgersAfter(after, ledgersAtOnce);
    const stored = await source.derivedRows(batch.map(([subject]) => subject));
    for (const [subject, rows] of batch) {
      const ledger = verifyLedger(rows);
      const wanted = projection(subject, ledger);
      const has = stored.get(subject) ?? [];
      const { remove, add, change } = derivedChanges(has, wanted);
      const wrong = change[0]?.row ?? add[0] ?? remove[0];
      if (wrong !== undefined)
        throw new Bad({
          subject,
          says: `The derived row in "${wrong.table}" is not what the notes say; "rebuild" makes it again.`,
        });
      entries += rows.length;
      derivedRows += has.length;
    }
    ledgers += batch.length;
    progress(entries);
    const last = batch.at(-1);
    if (last === undefined || batch.length < ledgersAtOnce) break;
    after = last[0];
  }
  if (entries !== counts.entries)
    throw new Bad({ says: `${counts.entries} entries are counted but ${entries} can be read.` });
  if (derivedRows !== counts.derivedRows)
    throw new Bad({ says: 'There are derived rows of notes that do not exist; "rebuild" removes them.' });
  return ledgers;
}

function verifyLedger(rows: readonly EntryRow[]): Entry[] {
  let previous: Entry | undefined;
  return rows.map((row, index) => {
    const bad = (says: string): Bad => new Bad({ subject: row.subject, seq: row.seq, says });
    if (row.seq !== index + 1) throw bad(`Entry ${index + 1} is missing from these notes.`);
    const entry = readable(row, bad);
    if (entry.previousHash !== (previous?.hash ?? beforeTheFirst))
      throw bad('This entry does not follow the one before it.');
    if (sha256(hashedText(entry, row.body)) !== entry.hash) throw bad('This entry was changed after it was written.');
    if (previous !== undefined && !(entry.recordedAt > previous.recordedAt))
      throw bad('This entry was not written after the one before it.');
    previous = entry;
    return entry;
  });
}

function readable(row: EntryRow, bad: (says: string) => Bad): Entry {
  try {
    return entryOfRow(row);
  } catch {
    throw bad('The body of this entry cannot be read.');
  }
}

async function verifyCommits(
  source: VerificationSource,
  counts: { readonly entries: number; readonly acts: number },
  progress: (acts: number) => void,
): Promise<CommitTail> {
  const tombstones = await source.tombstones();
  const custody = new Map<string, string>();
  for (const [subject, { body }] of tombstones) custody.set(expiryActId(subject), body);
  for (const { commit, body } of await source.acceptances()) custody.set(acceptanceActId(commit), body);

  let tail = noCommitYet;
  let acts = 0;
  let entries = 0;
  for (;;) {
    const commits = await source.commitsAfter(tail.commit, commitsAtOnce);
    const last = commits.at(-1);
    if (last === undefined) break;
    const stored = Map.groupBy(await source.actsOf(tail.commit + 1, last.commit), (act) => act.commit);
    const records = new Map([...stored].map(([commit, ofCommit]) => [commit, ofCommit.map((act) => readRecord(act))]));
    const present = await source.entriesAt([...records.values()].flat().flatMap((act) => act.wrote));
    for (const commit of commits) {
      const ofCommit = records.get(commit.commit) ?? [];
      verifyCommit(tail, commit, ofCommit);
      for (const act of ofCommit) {
        entries += verifyAct(commit.commit, act, present, tombstones);
        if (custody.get(act.id) !== undefined && sha256(custody.get(act.id) ?? '') === act.contentHash)
          custody.delete(act.id);
      }
      acts += ofCommit.length;
      tail = commit;
    }
    progress(acts);
  }
  if (acts !== counts.acts)
    throw new Bad({ commit: tail.commit + 1, says: 'There are acts that belong to no commit.' });
  if (entries !== counts.entries) throw new Bad({ says: 'There are entries that belong to no act.' });
  if (custody.size > 0)
    throw new Bad({ says: 'A tombstone or an acceptance of a restore was changed, or added by hand.' });
  return tail;
}

function readRecord(act: StoredAct): ActRecord {
  try {
    return { id: act.id, contentHash: act.contentHash, wrote: parseWrote(act.wroteText) };
  } catch {
    throw new Bad({ commit: act.commit, says: `What act ${act.id} wrote cannot be read.` });
  }
}

function verifyCommit(before: CommitTail, commit: CommitTail, acts: readonly ActRecord[]): void {
  if (commit.commit !== before.commit + 1)
    throw new Bad({ commit: before.commit + 1, says: `Commit ${before.commit + 1} is missing.` });
  if (nextCommit(before, acts).hash !== commit.hash)
    throw new Bad({
      commit: commit.commit,
      says: `Commit ${commit.commit} or one of its acts was changed after it was written.`,
    });
}

/** Returns how many of the act's entries are there. */
function verifyAct(
  commit: number,
  act: ActRecord,
  present: ReadonlyMap<string, EntryRow>,
  tombstones: ReadonlyMap<Subject, { readonly commit: number }>,
): number {
  const rows: EntryRow[] = [];
  for (const wrote of act.wrote) {
    const row = present.get(placeOfEntry(wrote));
    const expired = tombstones.get(wrote.subject);
    if (row === undefined && expired !== undefined && expired.commit > commit) continue;
    const bad = (says: string): Bad => new Bad({ subject: wrote.subject, seq: wrote.seq, commit, says });
    if (row === undefined) throw bad('This entry was removed after it was written.');
    if (expired !== undefined)
      throw bad('This entry is still there although its notes were removed at the end of their retention.');
    if (row.hash !== wrote.hash || row.act !== act.id) throw bad('This entry is not the one its act wrote.');
    rows.push(row);
  }
  const unmirrored = unmirroredPlace(rows.map(entryOfRow), (subject) => tombstones.has(subject));
  if (unmirrored !== undefined) throw new Bad({ ...unmirrored, commit });
  return rows.length;
}
