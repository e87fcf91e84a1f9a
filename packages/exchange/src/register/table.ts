/**
 * A register as a table: header and rows, each cell exactly as it was written (only trimmed). Reading never throws and
 * never drops a row: what cannot be read at all is refused as a whole, with the place and the remedy.
 */
import { CsvError, parse } from 'csv-parse/browser/esm/sync';
import { distinctNames, headerIndex } from './header-row.ts';
import { separatorOf } from './separator.ts';
import type { RegisterMapping } from './mapping.ts';

export type Separator = RegisterMapping['separator'];

/** One row of the file. `row` is its number in the spreadsheet: title lines, header and empty rows count. */
export type TableRow = { readonly row: number; readonly cells: readonly string[]; readonly beyond: readonly string[] };

export type Table = {
  readonly separator: Separator;
  readonly header: readonly string[];
  readonly rows: readonly TableRow[];
  /** Lines above the header, and repeated header lines, that hold no person. */
  readonly passedOver: number;
};

/** Why a whole file is refused. */
export type FileProblem = { readonly problem: string; readonly says: string; readonly remedy: string };
export type TableRead = { readonly table: Table } | { readonly refused: FileProblem };

/** Beyond these a file is not a register, or would hold up everybody else. */
export const registerLimits = { rows: 50_000, columns: 200, cellCharacters: 2_000 } as const;

const isBlankRow = (cells: readonly string[]): boolean => cells.every((cell) => cell === '');

const refused = (problem: string, says: string, remedy: string): TableRead => ({ refused: { problem, says, remedy } });

/** Splits text into rows of cells; a quote that never closes is told with its line. */
function recordsOf(text: string, separator: Separator): readonly (readonly string[])[] | FileProblem {
  try {
    return parse(text, {
      delimiter: separator,
      record_delimiter: ['\r\n', '\n', '\r'],
      relax_quotes: true,
      relax_column_count: true,
      trim: false,
    }).map((record) => record.map((cell) => cell.trim()));
  } catch (cause) {
    if (!(cause instanceof CsvError)) throw cause;
    const line = typeof cause['lines'] === 'number' ? ` at line ${cause['lines']}` : '';
    return {
      problem: 'quotes-do-not-close',
      says: `a quotation mark opens a cell and never closes${line}`,
      remedy: 'save the file again as CSV from the spreadsheet, or remove the stray quotation mark',
    };
  }
}

/** A first line `sep=;` that some spreadsheets write. */
function statedSeparator(text: string): { readonly separator: Separator; readonly rest: string } | undefined {
  const match = /^sep=([,;|\t])\r?\n/i.exec(text);
  return match === null ? undefined : { separator: match[1] as Separator, rest: text.slice(match[0].length) };
}

/** Reads a register. `separator` overrides what the file looks like. */
export function readRegister(fileText: string, separator?: Separator): TableRead {
  const text = fileText.replace(/^\uFEFF/, '');
  const stated = statedSeparator(text);
  const body = stated?.rest ?? text;
  const chosen = separator ?? stated?.separator ?? separatorOf(body);
  const records = recordsOf(body, chosen);
  if ('problem' in records) return { refused: records };
  const rowOffset = stated === undefined ? 1 : 2;
  const headerAt = headerIndex(records);
  if (headerAt === undefined) {
    return refused(
      'no-header',
      'no line of this file names two columns or more',
      'the first line of the table must name its columns',
    );
  }
  const header = distinctNames(records[headerAt] ?? []);
  if (header.length > registerLimits.columns) {
    return refused(
      'too-many-columns',
      `the file has ${header.length} columns; at most ${registerLimits.columns} can be read`,
      'keep only the columns that are wanted',
    );
  }
  const rows: TableRow[] = [];
  let passedOver = headerAt;
  const headerText = JSON.stringify(records[headerAt]);
  for (let index = headerAt + 1; index < records.length; index += 1) {
    const cells = records[index] ?? [];
    if (isBlankRow(cells)) continue;
    if (JSON.stringify(cells) === headerText) {
      passedOver += 1;
      continue;
    }
    const long = cells.findIndex((cell) => cell.length > registerLimits.cellCharacters);
    if (long >= 0) {
      return refused(
        'cell-too-long',
        `row ${index + rowOffset}: a cell has ${cells[long]?.length} characters; at most ${registerLimits.cellCharacters} can be read`,
        'shorten that cell; a quotation mark out of place can also run cells together',
      );
    }
    rows.push({
      row: index + rowOffset,
      cells: header.map((_, column) => cells[column] ?? ''),
      beyond: cells.slice(header.length).filter((cell) => cell !== ''),
    });
  }
  if (rows.length > registerLimits.rows) {
    return refused(
      'too-many-rows',
      `the file has ${rows.length} rows; at most ${registerLimits.rows} can be brought in at once`,
      'divide the file',
    );
  }
  if (rows.length === 0)
    return refused('no-rows', 'there is no row below the header', 'check that the right sheet was saved');
  return { table: { separator: chosen, header, rows, passedOver } };
}

/** The cells of a row by column name, as they are kept while the row waits. Cells beyond the header are kept too. */
export function cellsByName(table: Pick<Table, 'header'>, row: TableRow): Record<string, string> {
  const named = Object.fromEntries(table.header.map((name, column) => [name, row.cells[column] ?? '']));
  row.beyond.forEach((cell, index) => (named[beyondName(index)] = cell));
  return named;
}

const beyondPattern = /^beyond the last column \d+$/;
const beyondName = (index: number): string => `beyond the last column ${index + 1}`;

/** A row that waited, as a row again. */
export const rowFromCells = (
  header: readonly string[],
  row: number,
  cells: Readonly<Record<string, string>>,
): TableRow => ({
  row,
  cells: header.map((name) => (cells[name] ?? '').trim()),
  beyond: Object.entries(cells).flatMap(([name, cell]) =>
    beyondPattern.test(name) && cell.trim() !== '' ? [cell.trim()] : [],
  ),
});
