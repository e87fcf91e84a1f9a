/** A row that waited, tried again with corrected cells, together with the rows of the same person that wait for it. */
import { type DryRunInput, type DryRun, dryRun } from './dry-run.ts';
import type { RegisterMapping } from './mapping.ts';
import { type Table, rowFromCells } from './table.ts';

export type WaitingCells = { readonly row: number; readonly cells: Readonly<Record<string, string>> };

export type TryAgainInput = Omit<DryRunInput, 'table' | 'settled' | 'mapping'> & {
  /** The mapping the file was brought in with. */
  readonly mapping: RegisterMapping;
  /** Every row of the file that still waits, as it stands. */
  readonly waiting: readonly WaitingCells[];
  /** The row that is tried, and its cells as corrected. */
  readonly row: number;
  readonly cells: Readonly<Record<string, string>>;
  readonly sameAs?: string;
  readonly notTheSame?: boolean;
};

/**
 * The outcome for the tried row: its proposal (which names every row it settles), that all is in the notes already, or the
 * problems it still has. Unit and rows-per-person doubts cannot come up here: the mapping was complete when it was accepted.
 */
export type TriedAgain =
  | { readonly outcome: 'proposed'; readonly proposal: DryRun['proposals'][number] }
  | { readonly outcome: 'already here'; readonly rows: readonly number[]; readonly patient: string }
  | { readonly outcome: 'still waits'; readonly problems: DryRun['problems'] };

export function tryAgain(input: TryAgainInput): TriedAgain {
  const { waiting, row, cells, sameAs, notTheSame, mapping } = input;
  const header = mapping.columns.map((column) => column.column);
  const rows = [...waiting.filter((other) => other.row !== row), { row, cells }].toSorted((a, b) => a.row - b.row);
  const table: Table = {
    separator: mapping.separator,
    header,
    passedOver: 0,
    rows: rows.map((one) => rowFromCells(header, one.row, one.cells)),
  };
  const run = dryRun({
    ...input,
    table,
    settled: { row, ...(sameAs === undefined ? {} : { sameAs }), ...(notTheSame === undefined ? {} : { notTheSame }) },
  });
  const proposal = run.proposals.find((candidate) => candidate.rows.includes(row));
  if (proposal !== undefined) return { outcome: 'proposed', proposal };
  const here = run.alreadyHere.find((candidate) => candidate.rows.includes(row));
  if (here !== undefined) return { outcome: 'already here', rows: here.rows, patient: here.patient };
  return { outcome: 'still waits', problems: run.problems.filter((problem) => problem.row === row && problem.blocks) };
}
