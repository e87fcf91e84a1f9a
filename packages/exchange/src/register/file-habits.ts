/** How a whole file writes things: decimals, dates, blanks, rows. Read from its cells, for a suggestion. */
import { orderTold } from './cell-date.ts';
import { isDateMeaning } from './header-words.ts';
import type { DateOrder, RegisterMapping } from './mapping.ts';
import { numberKey } from './similar.ts';
import type { Table } from './table.ts';

/** Something the suggestion supposed. `column` is absent where it concerns the whole file. */
export type Doubt = { readonly column?: string; readonly says: string };

export const usualBlanks = [
  '-',
  '--',
  '.',
  '?',
  'n/a',
  'na',
  '#n/a',
  'n/k',
  'nk',
  'nd',
  'not known',
  'unknown',
  'not done',
  'not recorded',
  'none recorded',
  'tbc',
  'null',
  'missing',
];

const isBlank = (cell: string): boolean => cell.trim() === '' || usualBlanks.includes(cell.trim().toLowerCase());
export const cellsIn = (table: Table, index: number): readonly string[] =>
  table.rows.map((row) => row.cells[index] ?? '').filter((cell) => !isBlank(cell));
export const share = (cells: readonly string[], holds: (cell: string) => boolean): number =>
  cells.length === 0 ? 0 : cells.filter(holds).length / cells.length;

export function decimalOf(table: Table, doubts: Doubt[]): RegisterMapping['decimal'] {
  let commas = 0;
  let points = 0;
  for (const row of table.rows) {
    for (const cell of row.cells) {
      if (/^[<>≤≥]?\s*\d+,\d{1,4}(?:\s|$)/.test(cell)) commas += 1;
      else if (/^[<>≤≥]?\s*\d+\.\d{1,4}(?:\s|$)/.test(cell)) points += 1;
    }
  }
  if (commas > 0 && points > 0)
    doubts.push({
      says: `decimals are written with a comma in ${commas} cells and with a point in ${points}; the fewer will wait`,
    });
  return commas > points ? ',' : '.';
}

export function dateOrderOf(table: Table, columns: RegisterMapping['columns'], doubts: Doubt[]): DateOrder {
  const told = { 'day first': 0, 'month first': 0, 'year first': 0, either: 0 };
  columns.forEach((column, index) => {
    if (!isDateMeaning(column.meaning)) return;
    for (const cell of cellsIn(table, index)) {
      const order = orderTold(cell);
      if (order !== undefined) told[order] += 1;
    }
  });
  const { 'day first': dayFirst, 'month first': monthFirst } = told;
  if (dayFirst > 0 && monthFirst > 0)
    doubts.push({ says: `${dayFirst} of the dates can only have the day first, ${monthFirst} only the month first` });
  if (dayFirst > 3 * monthFirst) return 'day month year';
  if (monthFirst > 3 * dayFirst) return 'month day year';
  if (dayFirst === 0 && monthFirst === 0 && told.either === 0)
    return told['year first'] > 0 ? 'year month day' : 'day month year';
  doubts.push({ says: 'nothing tells whether the day or the month stands first in the dates: choose' });
  return 'not known';
}

export function twoFigureYears(table: Table, columns: RegisterMapping['columns'], doubts: Doubt[]): void {
  columns.forEach(({ column, meaning }, index) => {
    if (!isDateMeaning(meaning)) return;
    const short = cellsIn(table, index).find((cell) =>
      /^\d{1,2}[-/. ](?:\d{1,2}|[a-z]{3,9})[-/. ]\d{2}$/i.test(cell.trim()),
    );
    if (short === undefined) return;
    doubts.push({
      column,
      says: `years have two figures, such as "${short}": ${meaning === 'birth date' ? 'a birth is put in the century that makes the person between 18 and 110' : 'they are taken as 20..'}`,
    });
  });
}

export function rowsPerPersonOf(
  table: Table,
  columns: RegisterMapping['columns'],
  doubts: Doubt[],
): RegisterMapping['rowsPerPerson'] {
  const index = columns.findIndex((column) => column.meaning === 'number');
  if (index < 0) return 'one';
  const numbers = cellsIn(table, index).map(numberKey);
  const repeated = numbers.length - new Set(numbers).size;
  if (repeated === 0) return 'one';
  doubts.push({ says: `${repeated} rows repeat a number of another row: several rows are read as one person` });
  return 'several';
}
