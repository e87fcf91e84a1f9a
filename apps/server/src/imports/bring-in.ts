/**
 * Bringing in a register: what the file would write is shown first, then written person by person. Ids come from the file and
 * the row, so the same file twice, or once more after a crash, adds nothing that is there already.
 */
import { type Author, type Entry, type SubjectRecord, subjectId } from '@twelvemonth/clinical';
import {
  type AcceptAnswer,
  type DryRun,
  type DryRunAnswer,
  type KnownPerson,
  type RegisterMapping,
  dryRun,
  dryRunAnswerOf,
  knownPerson,
  readRegister,
  suggestMapping,
} from '@twelvemonth/exchange';
import { doAct } from '../acts/do-act.ts';
import type { AtHand } from '../at-hand.ts';
import { Refused, notHere } from '../problem.ts';
import { entriesOf } from '../register/notes.ts';
import type { UnitNow } from '../register/units.ts';
import { fingerprintOf, idFrom } from './ids.ts';
import { type NotedRow, noteRun } from './noted-rows.ts';

export type File = {
  readonly file: string;
  readonly text: string;
  readonly unit: string;
  readonly mapping?: RegisterMapping | undefined;
};

/** Everyone in the notes, as far as a register can say it again or contradict it. */
export async function everyoneKnown({ store, notes }: AtHand): Promise<KnownPerson[]> {
  const records = new Map((await notes.all('patient')).map((record) => [record.subject, record]));
  const known: KnownPerson[] = [];
  const know = (record: SubjectRecord, entries: readonly Entry[]): void => {
    const person = knownPerson(subjectId(record.subject), entries, record);
    if (person !== undefined) known.push(person);
  };
  await store.everyLedger('patient', (of, entries) => {
    const record = records.get(of);
    if (record !== undefined && record.together === undefined) know(record, entries);
  });
  for (const record of records.values())
    if (record.together !== undefined) know(record, await entriesOf(store, record));
  return known;
}

type Run = {
  readonly answer: DryRunAnswer;
  readonly run: DryRun;
  readonly unit: UnitNow;
  readonly mapping: RegisterMapping;
  readonly fingerprint: string;
};

async function runOf(atHand: AtHand, { file, text, unit: unitId, mapping: given }: File): Promise<Run | Refused> {
  const unit = await atHand.units.named(unitId);
  if (unit === undefined) return notHere('unit');
  const read = readRegister(text, given?.separator);
  if ('refused' in read) {
    const { problem, says, remedy } = read.refused;
    return new Refused(422, problem, says, { reasons: [{ name: problem, says, remedy, field: 'text' }] });
  }
  const suggested = given === undefined ? suggestMapping(read.table, file) : undefined;
  const mapping = given ?? suggested?.mapping;
  if (mapping === undefined) throw new Error('a register without a mapping');
  const fingerprint = fingerprintOf(text);
  const run = dryRun({
    table: read.table,
    mapping,
    known: await everyoneKnown(atHand),
    today: unit.today,
    unit: unitId,
    fingerprint,
    idFrom,
  });
  const answer = dryRunAnswerOf({
    file,
    fingerprint,
    table: read.table,
    mapping,
    run,
    doubts: suggested?.doubts ?? [],
  });
  return { answer, run, unit, mapping, fingerprint };
}

export async function tryOut(atHand: AtHand, file: File): Promise<DryRunAnswer | Refused> {
  const made = await runOf(atHand, file);
  return made instanceof Refused ? made : made.answer;
}

/** How many people are written at once: their acts share the disk's syncs. */
const peopleAtOnce = 16;

export async function accept(
  atHand: AtHand,
  file: File & { readonly fingerprint: string },
  by: Author,
): Promise<AcceptAnswer | Refused> {
  const made = await runOf(atHand, file);
  if (made instanceof Refused) return made;
  if (made.fingerprint !== file.fingerprint)
    return new Refused(409, 'other-file', 'The file is not the one that was tried out: try it out again.');
  if (made.run.mappingProblems.length > 0) {
    const reasons = made.run.mappingProblems.map(({ says, remedy, column }) => ({
      name: 'mapping-incomplete',
      says,
      remedy,
      field: column === undefined ? 'mapping' : `mapping.${column}`,
    }));
    return new Refused(422, 'mapping-incomplete', 'The mapping lacks something: nothing was taken in.', { reasons });
  }
  const taken = { rows: 0, people: 0, facts: 0 };
  const waiting: NotedRow[] = made.run.waiting.map(({ row, cells, problems }) => ({ row, cells, problems }));
  const { proposals } = made.run;
  for (let from = 0; from < proposals.length; from += peopleAtOnce) {
    const outcomes = await Promise.all(
      proposals
        .slice(from, from + peopleAtOnce)
        .map(async (proposal) => ({ proposal, refused: await written(atHand, proposal, by) })),
    );
    for (const { proposal, refused } of outcomes) {
      if (refused === undefined) {
        taken.rows += proposal.rows.length;
        taken.people += 1;
        taken.facts += proposal.facts;
      } else if (refused.status === 503 || refused.status === 403) return refused;
      else
        for (const [index, row] of proposal.rows.entries())
          waiting.push(rowRefused(row, proposal.cells[index] ?? {}, refused));
    }
  }
  const noted = await noteRun(
    atHand,
    {
      file: file.file,
      unit: file.unit,
      fingerprint: made.fingerprint,
      mapping: made.mapping,
      rows: made.answer.rows,
      taken: taken.rows,
      waiting,
    },
    by,
  );
  if (noted instanceof Refused) return noted;
  return {
    taken: taken.rows,
    people: taken.people,
    facts: taken.facts,
    alreadyHere: made.answer.counts.alreadyHere,
    waiting: waiting.length,
  };
}

/** Writes one person; undefined once everything of theirs is in the notes. */
export async function written(
  atHand: AtHand,
  proposal: DryRun['proposals'][number],
  by: Author,
): Promise<Refused | undefined> {
  for (const { id, act } of proposal.acts) {
    const answer = await doAct(atHand, { id, act, by });
    if (answer instanceof Refused) return answer;
  }
  return undefined;
}

const rowRefused = (row: number, cells: NotedRow['cells'], refused: Refused): NotedRow => ({
  row,
  cells,
  problems: (refused.reasons.length === 0
    ? [{ name: refused.name, says: refused.says, remedy: 'correct the row and try again' }]
    : refused.reasons
  ).map(({ name, says, remedy }) => ({
    column: '',
    problem: name,
    says,
    remedy: remedy ?? 'correct the row and try again',
  })),
});
