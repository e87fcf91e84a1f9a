// Whatever a file holds, reading it never throws, and no row of it is lost.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type DryRun,
  type RegisterMapping,
  type Table,
  meanings,
  readRegister,
  suggestMapping,
  dryRun,
} from '../src/index.ts';
import { idFrom, today } from './bring-in.ts';

const rowsOf = (run: DryRun): number[] =>
  [
    ...run.proposals.flatMap((proposal) => proposal.rows),
    ...run.alreadyHere.flatMap((here) => here.rows),
    ...run.waiting.map((waiting) => waiting.row),
  ].toSorted((a, b) => a - b);

const runWith = (table: Table, mapping: RegisterMapping): DryRun =>
  dryRun({ table, mapping, known: [], today, unit: 'thornbeck', fingerprint: 'f', idFrom });

/** What is wrong with the outcome of a file, as sentences; empty if nothing is. */
function lost(
  text: string,
  change: (mapping: RegisterMapping) => RegisterMapping = (mapping) => mapping,
): readonly string[] {
  const read = readRegister(text);
  if (!('table' in read))
    return read.refused.says === '' || read.refused.remedy === '' ? ['refused without a reason'] : [];
  const run = runWith(read.table, change(suggestMapping(read.table, 'junk').mapping));
  const wanted = read.table.rows.map((row) => row.row);
  const wrong =
    JSON.stringify(rowsOf(run)) === JSON.stringify(wanted)
      ? []
      : [`rows ${JSON.stringify(wanted)} came out as ${JSON.stringify(rowsOf(run))}`];
  const mute = run.mappingProblems.length > 0 ? [] : run.waiting.filter((waiting) => waiting.problems.length === 0);
  const long = run.proposals
    .flatMap(({ acts }) => acts)
    .filter(({ act }) => act.lines.length === 0 || act.lines.length > 60);
  return [
    ...wrong,
    ...mute.map(({ row }) => `row ${row} waits without a reason`),
    ...long.map(({ id }) => `act ${id} has no lines or too many`),
  ];
}

const heading = fc.constantFrom(
  'MRN',
  'Surname',
  'Forename',
  'DOB',
  'Sex',
  'Zol 1',
  'Zol 2',
  'Last zol',
  'Drug',
  'Batch',
  'Bloods taken',
  'Creat',
  'Creat umol/L',
  'Adj Ca',
  'Vit D nmol/L',
  'Wt kg',
  'Weighed',
  'Ht',
  'Fracture',
  'Fracture date',
  'Hip repair',
  'Allergies',
  'Consent',
  'Dental',
  'Notes',
  'Died',
  'Referred on',
  'what is this',
  '',
);
const cell = fc.oneof(
  fc.constantFrom(
    '',
    '-',
    'n/k',
    '13/06/1941',
    '06/13/1941',
    '1941',
    '13.05.2025',
    '2024-02-30',
    '88',
    '0.9',
    '2,31',
    '<20',
    '9st 4lb',
    '56kg',
    'F',
    'M',
    'NOF',
    'NKDA',
    'Y',
    '=1+1',
    'Tarn',
    'Ada',
    'TARN, Ada',
    '999 1',
    '999 2',
    '45385',
    'a "b"',
    'x;y',
    '\u0000',
    '\uFFFD',
  ),
  fc.string({ unit: 'binary', maxLength: 12 }),
);
const quoted = (text: string): string => (/[",;\t|\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

const checkNoneLost = (...of: Parameters<typeof lost>): void => {
  expect(lost(...of)).toEqual([]);
};

describe('no row is lost', () => {
  it('in any text at all', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 400 }), (text) => checkNoneLost(text)),
      { seed: 20261125, numRuns: 1500 },
    );
  });

  it('in any text made of what separates and quotes', () => {
    fc.assert(
      fc.property(
        fc.string({
          unit: fc.constantFrom(',', ';', '\t', '|', '"', '\n', '\r', 'a', '1', ' ', '\uFEFF', 'sep='),
          maxLength: 200,
        }),
        (text) => checkNoneLost(text),
      ),
      { seed: 20261126, numRuns: 1500 },
    );
  });

  it('in registers with believable columns and any cells', () => {
    fc.assert(
      fc.property(
        fc.array(heading, { minLength: 2, maxLength: 14 }),
        fc.array(fc.array(cell, { maxLength: 15 }), { maxLength: 12 }),
        fc.constantFrom(',', ';', '\t', '|'),
        (columns, rows, separator) =>
          checkNoneLost([columns, ...rows].map((cells) => cells.map(quoted).join(separator)).join('\n')),
      ),
      { seed: 20261127, numRuns: 1500 },
    );
  });

  it('under any mapping, however wrong', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom(...meanings), fc.constantFrom(undefined, 'kg', 'umol/L', 'nonsense')), {
          minLength: 14,
          maxLength: 14,
        }),
        fc.array(fc.array(cell, { minLength: 8, maxLength: 14 }), { minLength: 1, maxLength: 8 }),
        fc.constantFrom<RegisterMapping['dateOrder']>(
          'day month year',
          'month day year',
          'year month day',
          'not known',
        ),
        (wanted, rows, dateOrder) =>
          checkNoneLost(
            [Array.from({ length: 14 }, (_, index) => `c${index}`), ...rows]
              .map((cells) => cells.map(quoted).join(','))
              .join('\n'),
            (mapping) => ({
              ...mapping,
              dateOrder,
              columns: mapping.columns.map(({ column }, index) => ({
                column,
                meaning: wanted[index]?.[0] ?? 'ignore',
                ...(wanted[index]?.[1] === undefined ? {} : { unit: wanted[index][1] }),
              })),
            }),
          ),
      ),
      { seed: 20261128, numRuns: 800 },
    );
  });
});
