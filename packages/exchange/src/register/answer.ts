/** A dry run as it crosses the wire and as the command line prints it. */
import type { DryRunAnswer } from '../contract/import.ts';
import type { DryRun } from './dry-run.ts';
import { inWords } from './lines.ts';
import type { RegisterMapping } from './mapping.ts';
import type { Doubt } from './file-habits.ts';
import type { Table } from './table.ts';

const samplesShown = 5;
const rowsShown = 5;

export function dryRunAnswerOf(of: {
  readonly file: string;
  readonly fingerprint: string;
  readonly table: Table;
  readonly mapping: RegisterMapping;
  readonly run: DryRun;
  readonly doubts: readonly Doubt[];
}): DryRunAnswer {
  const { table, run, mapping } = of;
  return {
    file: of.file,
    fingerprint: of.fingerprint,
    columns: table.header.map((column, index) => ({
      column,
      samples: [...new Set(table.rows.map((row) => row.cells[index] ?? '').filter((cell) => cell !== ''))].slice(
        0,
        samplesShown,
      ),
    })),
    mapping,
    mappingProblems: run.mappingProblems.map((problem) => ({ ...problem })),
    doubts: of.doubts.map((doubt) => ({ ...doubt })),
    rows: table.rows.length,
    counts: {
      newPeople: run.proposals.filter((proposal) => proposal.isNew).length,
      knownPeople: run.proposals.filter((proposal) => !proposal.isNew).length + run.alreadyHere.length,
      newFacts: run.proposals.reduce((sum, proposal) => sum + proposal.facts, 0),
      alreadyHere:
        run.proposals.reduce((sum, proposal) => sum + proposal.alreadyHere, 0) +
        run.alreadyHere.reduce((sum, here) => sum + here.facts, 0),
      rowsWaiting: run.waiting.length,
    },
    problems: run.problems.map((problem) => ({ ...problem })),
    preview: run.proposals.slice(0, rowsShown).map((proposal) => ({
      row: proposal.rows[0] ?? 0,
      who: proposal.who,
      isNew: proposal.isNew,
      lines: [...inWords(proposal.acts)],
    })),
    passedOver: table.passedOver,
  };
}
