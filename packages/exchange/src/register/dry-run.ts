/**
 * What bringing a register in would write, and what would wait, without writing anything. Every row of the table ends up
 * in exactly one of three: proposed, already here, waiting.
 */
import type { Day } from '@twelvemonth/clinical';
import { type AgainstNotes, compareWithNotes, isSomebodyElse } from './against-notes.ts';
import { checkCheckDigits } from './check-digit.ts';
import type { KnownPerson } from './known.ts';
import { type TakeIn, actsOf, linesOf, misfit } from './lines.ts';
import { LookAlikes } from './look-alikes.ts';
import type { RegisterMapping } from './mapping.ts';
import { type PersonRead, readTogether } from './person.ts';
import { type RowProblem, reportInto } from './problem.ts';
import { type RowRead, readRow } from './row.ts';
import { type MappingProblem, sheetOf } from './sheet.ts';
import { numberKey } from './similar.ts';
import { type Table, cellsByName } from './table.ts';

export type DryRunInput = {
  readonly table: Table;
  readonly mapping: RegisterMapping;
  readonly known: readonly KnownPerson[];
  readonly today: Day;
  /** The unit new people are referred to. */
  readonly unit: string;
  /** Of the file's text, so that the same file makes the same ids. */
  readonly fingerprint: string;
  /** Makes an id (UUID) from a text, always the same one; the shell hands in a hash. */
  readonly idFrom: (text: string) => string;
  /** Said by a person about a row that waited for looking like someone: it is the same person, or it is not. */
  readonly settled?: { readonly row: number; readonly sameAs?: string; readonly notTheSame?: boolean };
};

export type Proposal = {
  readonly rows: readonly number[];
  /** The rows as they stand in the file, in case the notes refuse them after all and they must wait. */
  readonly cells: readonly Readonly<Record<string, string>>[];
  readonly patient: string;
  readonly isNew: boolean;
  readonly who: string;
  /** In this order; each is whole or not at all. */
  readonly acts: readonly TakeIn[];
  readonly facts: number;
  readonly alreadyHere: number;
};
export type Waiting = {
  readonly row: number;
  readonly cells: Readonly<Record<string, string>>;
  readonly problems: readonly RowProblem[];
};

export type DryRun = {
  readonly mappingProblems: readonly MappingProblem[];
  readonly proposals: readonly Proposal[];
  /** Rows all of whose facts are in the notes. */
  readonly alreadyHere: readonly {
    readonly rows: readonly number[];
    readonly patient: string;
    readonly facts: number;
  }[];
  readonly waiting: readonly Waiting[];
  /** Of all rows, in the order of the file. */
  readonly problems: readonly RowProblem[];
};

export function dryRun(input: DryRunInput): DryRun {
  const { table, mapping, today } = input;
  const { sheet, problems: mappingProblems } = sheetOf(table, mapping, today);
  const rows = table.rows.map((row) => readRow(sheet, row));
  checkCheckDigits(rows);
  const people = grouped(rows, mapping).map(([key, members]) => readTogether(key, members));
  const byNumber = new Map(
    input.known.flatMap((known) =>
      [...(known.otherNumbers ?? []), known.number].map((number) => [numberKey(number), known] as const),
    ),
  );
  const lookAlikes = new LookAlikes(input.known, people);
  const outcome = {
    proposals: [] as Proposal[],
    alreadyHere: [] as DryRun['alreadyHere'][number][],
    waiting: [] as Waiting[],
  };
  for (const person of people)
    settle(person, { input, byNumber, lookAlikes, mappingIncomplete: mappingProblems.length > 0 }, outcome);
  return {
    mappingProblems,
    ...outcome,
    waiting: outcome.waiting.toSorted((a, b) => a.row - b.row),
    problems: rows.flatMap((row) => row.problems),
  };
}

/** Rows by number. Rows without one stand alone. */
function grouped(
  rows: readonly RowRead[],
  mapping: RegisterMapping,
): readonly (readonly [string, readonly RowRead[]])[] {
  const groups = new Map<string, RowRead[]>();
  for (const row of rows) {
    const number = numberKey(row.person.number ?? '');
    const key = number === '' ? `row ${row.row}` : number;
    const there = groups.get(key);
    if (there === undefined) groups.set(key, [row]);
    else there.push(row);
  }
  if (mapping.rowsPerPerson === 'one') {
    for (const members of groups.values()) {
      if (members.length === 1) continue;
      for (const row of members)
        reportInto(row.problems, row.row)(
          '',
          'number-twice',
          row.person.number ?? '',
          `rows ${members.map((member) => member.row).join(', ')} have the same number`,
          'if a person may have several rows in this file, say so in the mapping; otherwise correct the row that is wrong',
        );
    }
  }
  return [...groups];
}

type Settling = {
  readonly input: DryRunInput;
  readonly byNumber: ReadonlyMap<string, KnownPerson>;
  readonly lookAlikes: LookAlikes;
  readonly mappingIncomplete: boolean;
};

function settle(
  person: PersonRead,
  settling: Settling,
  outcome: { proposals: Proposal[]; alreadyHere: DryRun['alreadyHere'][number][]; waiting: Waiting[] },
): void {
  const { input, byNumber } = settling;
  const first = person.rows[0];
  if (first === undefined) return;
  const said =
    input.settled !== undefined && person.rows.some((row) => row.row === input.settled?.row)
      ? input.settled
      : undefined;
  const known =
    said?.sameAs === undefined
      ? byNumber.get(person.key)
      : input.known.find((candidate) => candidate.patient === said.sameAs);
  const report = reportInto(first.problems, first.row);
  let against: AgainstNotes = { fresh: person.facts, alreadyHere: 0 };
  if (known !== undefined) {
    if (said?.sameAs === undefined && isSomebodyElse(person, known))
      report(
        '',
        'number-of-another-person',
        person.said.number ?? '',
        `the number ${known.number} is ${known.given} ${known.family}, born ${known.born}, in the notes`,
        'correct the number, the name or the birth date',
      );
    else against = compareWithNotes(person, known);
  } else if (said?.notTheSame !== true) {
    for (const { likely, says } of settling.lookAlikes.of(person))
      report(
        '',
        likely ? 'looks-like-someone' : 'may-be-someone',
        person.said.number ?? '',
        says,
        'decide whether it is the same person',
      );
  }
  const isNew = known === undefined;
  const patient = known?.patient ?? input.idFrom(`patient|${input.fingerprint}|${person.key}`);
  const lines = linesOf(person, against.fresh, {
    isNew,
    hasContact: known?.contact !== undefined,
    today: input.today,
    unit: input.unit,
  });
  const wrong = misfit(lines);
  if (wrong !== undefined)
    report('', 'does-not-fit', '', `it cannot be written: ${wrong.says}`, 'shorten or correct the cell');
  const held = person.rows.some((row) => row.problems.some((problem) => problem.blocks));
  if (held || settling.mappingIncomplete) {
    outcome.waiting.push(...waitingRows(person.rows, input.table, held));
  } else if (lines.length === 0) {
    outcome.alreadyHere.push({ rows: person.rows.map((row) => row.row), patient, facts: against.alreadyHere });
  } else {
    const acts = actsOf(lines, patient, isNew, (part) =>
      input.idFrom(`take in|${input.fingerprint}|${person.rows.map((row) => row.row).join(',')}|${part}`),
    );
    outcome.proposals.push({
      rows: person.rows.map((row) => row.row),
      cells: person.rows.map((row) => cellsByName(input.table, row.tableRow)),
      patient,
      isNew,
      acts,
      who: `${person.said.family ?? ''}, ${person.said.given ?? ''} (${person.said.number ?? ''})`,
      facts: lines.length,
      alreadyHere: against.alreadyHere,
    });
  }
}

/** All rows of the person wait together: a dose left out would make the next one look due. */
function waitingRows(rows: readonly RowRead[], table: Table, held: boolean): readonly Waiting[] {
  const culprits = rows.filter((row) => row.problems.some((problem) => problem.blocks));
  return rows.map((row) => {
    if (held && !culprits.includes(row)) {
      reportInto(row.problems, row.row)(
        '',
        'waits-with-another-row',
        '',
        `row ${culprits.map((culprit) => culprit.row).join(', ')} of the same person waits`,
        'settle that row; this one follows',
      );
    }
    return {
      row: row.row,
      cells: cellsByName(table, row.tableRow),
      problems: row.problems.filter((problem) => problem.blocks),
    };
  });
}
