/** Brings a register in, in memory, as the service would: for the tests of this package. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { type Draft, type Entry, day, entriesFromDrafts, kindNamed, recordOf, subject } from '@twelvemonth/clinical';
import {
  type DryRun,
  type KnownPerson,
  type Proposal,
  type RegisterMapping,
  type Table,
  dryRun,
  knownPerson,
  readRegister,
  suggestMapping,
} from '../src/index.ts';

export const today = day('2026-11-25');

export const idFrom = (text: string): string => {
  const hex = createHash('sha256').update(text).digest('hex');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20, 32)].join('-');
};

export const fixture = (name: string): string => readFileSync(new URL(`./registers/${name}`, import.meta.url), 'utf8');

export function tableOf(text: string): Table {
  const read = readRegister(text);
  if (!('table' in read)) throw new Error(read.refused.says);
  return read.table;
}

export function runOf(
  text: string,
  options: { mapping?: Partial<RegisterMapping>; known?: readonly KnownPerson[] } = {},
): DryRun {
  const table = tableOf(text);
  const mapping = { ...suggestMapping(table, 'test').mapping, ...options.mapping };
  return dryRun({
    table,
    mapping,
    known: options.known ?? [],
    today,
    unit: 'thornbeck',
    fingerprint: idFrom(text),
    idFrom,
  });
}

/** The entries a proposal would become, written in the order of its acts. */
export const entriesOf = (proposal: Proposal): readonly Entry[] =>
  entriesFromDrafts(
    proposal.acts.flatMap(({ act }) =>
      act.lines.map((line): Draft => ({
        subject: subject('patient', act.patient),
        kind: line.kind,
        shape: kindNamed(line.kind).shape,
        body: line.body,
        effectiveAt: line.effectiveAt,
        zone: 'Europe/London',
      })),
    ),
    { start: '2026-11-25T09:00:00.000Z' },
  );

export function knownFrom(patient: string, entries: readonly Entry[]): KnownPerson {
  const known = knownPerson(patient, entries, recordOf(subject('patient', patient), entries));
  if (known === undefined) throw new Error('notes without an identity');
  return known;
}

/** What the service knows once the proposals have been taken in. */
export const afterwards = (run: DryRun): readonly KnownPerson[] =>
  run.proposals.map((proposal) => knownFrom(proposal.patient, entriesOf(proposal)));

/** Problems of a row by name. */
export const problemsOf = (run: DryRun, row: number): readonly string[] =>
  run.problems.filter((problem) => problem.row === row).map((problem) => problem.problem);

/** A register of one person with one measured column and its date, for tests of a single cell. */
const oneCell = (heading: string, cell: string): string =>
  `Hosp No\tSurname\tForename\tDOB\tSex\t${/weight|height/i.test(heading) ? 'Date weighed' : 'Bloods taken'}\t${heading}\n999 100 2003\tArkwright\tWilla\t02/06/1941\tF\t13/10/2026\t${cell}\n`;
export const problemsWith = (heading: string, cell: string): readonly string[] =>
  problemsOf(runOf(oneCell(heading, cell), { mapping: { dateOrder: 'day month year', decimal: '.' } }), 2);
