/**
 * A first mapping of a file nobody has mapped yet. It is a suggestion for a person to confirm: whatever it inferred from
 * values rather than read in the headings is listed as a doubt, and where values fit two units no unit is put in.
 */
import { orderTold, readDate } from './cell-date.ts';
import { readNumber } from './cell-number.ts';
import { medicineOf } from './cell-words.ts';
import { isDateMeaning, meaningOfHeader, measureOf } from './header-words.ts';
import type { DateOrder, Meaning, RegisterMapping } from './mapping.ts';
import { unitsThatFit } from './plausible.ts';
import { numberKey } from './similar.ts';
import type { Table } from './table.ts';
import { type Measure, unitInHeader } from './unit-words.ts';
import type { Day } from '@twelvemonth/clinical';

/** Something the suggestion supposed. `column` is absent where it concerns the whole file. */
export type Doubt = { readonly column?: string; readonly says: string };
export type Suggestion = { readonly mapping: RegisterMapping; readonly doubts: readonly Doubt[] };

const usualBlanks = [
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
const cellsIn = (table: Table, index: number): readonly string[] =>
  table.rows.map((row) => row.cells[index] ?? '').filter((cell) => !isBlank(cell));
const share = (cells: readonly string[], holds: (cell: string) => boolean): number =>
  cells.length === 0 ? 0 : cells.filter(holds).length / cells.length;

/** Whether a cell has the look of a date, in whatever order. */
const looksLikeDate = (cell: string): boolean =>
  !['not a date', 'day number'].includes(readDate(cell, { order: 'not known', use: 'event', today: 0 as Day }).read) &&
  /[-/. ]|[a-z]/i.test(cell.trim());

export function suggestMapping(table: Table, name: string): Suggestion {
  const doubts: Doubt[] = [];
  const decimal = decimalOf(table, doubts);
  const columns: RegisterMapping['columns'] = table.header.map((column, index) => {
    const meaning = meaningOf(table, column, index, doubts);
    const measure = measureOf(meaning);
    const unit = measure === undefined ? undefined : unitOf(table, { column, index, measure, decimal }, doubts);
    return { column, meaning, ...(unit === undefined ? {} : { unit }) };
  });
  onlyOnce(columns, doubts);
  const dateOrder = dateOrderOf(table, columns, doubts);
  twoFigureYears(table, columns, doubts);
  return {
    mapping: {
      version: 1,
      name: name.slice(0, 100) || 'register',
      separator: table.separator,
      decimal,
      dateOrder,
      rowsPerPerson: rowsPerPersonOf(table, columns, doubts),
      dosesGiven: 'this service',
      columns,
      blanks: [...usualBlanks],
    },
    doubts,
  };
}

function meaningOf(table: Table, column: string, index: number, doubts: Doubt[]): Meaning {
  const fromHeader = meaningOfHeader(column);
  if (fromHeader === undefined) {
    if (cellsIn(table, index).length > 0)
      doubts.push({ column, says: `"${column}" is not a heading that is known here; the column is left out` });
    return 'ignore';
  }
  const cells = cellsIn(table, index);
  const dates = share(cells, looksLikeDate);
  const measure = measureOf(fromHeader);
  if (measure !== undefined && dates > 0.6) {
    const dated: Meaning =
      measure === 'vitamin D'
        ? 'vitamin D date'
        : measure === 'weight' || measure === 'height'
          ? 'weight date'
          : measure === 'creatinine'
            ? 'creatinine date'
            : 'bloods date';
    doubts.push({ column, says: `the cells are dates: taken as ${dated}` });
    return dated;
  }
  // A heading that promises dates keeps its promise or its rows wait: a column of doses is never dropped for its cells.
  if (isDateMeaning(fromHeader) && dates < 0.5 && share(cells, (cell) => medicineOf(cell) !== undefined) > 0.5) {
    doubts.push({ column, says: 'the cells are medicines, not dates: taken as the medicine' });
    return 'dose medicine';
  }
  if (fromHeader === 'fracture site' && dates > 0.6) return 'fracture date';
  return fromHeader;
}

/** A second column for something a person has once is left out, and said so. */
function onlyOnce(columns: RegisterMapping['columns'], doubts: Doubt[]): void {
  const once: readonly Meaning[] = [
    'number',
    'title',
    'family name',
    'given name',
    'full name',
    'birth date',
    'sex',
    'telephone',
    'address',
    'family doctor',
    'referred on',
    'referred by',
    'reason',
    'tier',
    'height',
    'allergy',
    'consent',
    'dental',
    'died on',
    'last dose date',
  ];
  const seen = new Map<Meaning, string>();
  for (const entry of columns) {
    const first = seen.get(entry.meaning);
    if (first !== undefined && (once.includes(entry.meaning) || /^dose \d/.test(entry.meaning))) {
      doubts.push({
        column: entry.column,
        says: `"${first}" is already taken as ${entry.meaning}; this column is left out`,
      });
      entry.meaning = 'ignore';
      delete entry.unit;
    } else seen.set(entry.meaning, first ?? entry.column);
  }
}

function decimalOf(table: Table, doubts: Doubt[]): RegisterMapping['decimal'] {
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

function unitOf(
  table: Table,
  of: { column: string; index: number; measure: Measure; decimal: RegisterMapping['decimal'] },
  doubts: Doubt[],
): string | undefined {
  const stated = unitInHeader(of.measure, of.column);
  const read = cellsIn(table, of.index).map((cell) => readNumber(cell, of.measure, of.decimal));
  const values = read.flatMap((one) => ('value' in one && one.ownUnit === undefined ? [Number(one.value)] : []));
  const fits = unitsThatFit(of.measure, values);
  if (stated !== undefined) {
    if (values.length >= 3 && fits.length > 0 && !fits.includes(stated))
      doubts.push({
        column: of.column,
        says: `the heading says ${stated}, but the values look like ${fits.join(' or ')}`,
      });
    return stated;
  }
  if (of.measure === 'egfr') return 'mL/min/1.73m2';
  const only = fits.length === 1 ? fits[0] : undefined;
  if (only !== undefined)
    doubts.push({ column: of.column, says: `no unit is written; from the values ${only} is supposed` });
  else if (values.length > 0)
    doubts.push({
      column: of.column,
      says:
        fits.length > 1
          ? `no unit is written, and the values could be ${fits.join(' or ')}: choose`
          : 'no unit is written, and the values fit none: choose',
    });
  return only;
}

function dateOrderOf(table: Table, columns: RegisterMapping['columns'], doubts: Doubt[]): DateOrder {
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
    doubts.push({ says: `${dayFirst} dates have the day first and ${monthFirst} the month first` });
  if (dayFirst > 3 * monthFirst) return 'day month year';
  if (monthFirst > 3 * dayFirst) return 'month day year';
  if (dayFirst === 0 && monthFirst === 0 && told.either === 0)
    return told['year first'] > 0 ? 'year month day' : 'day month year';
  doubts.push({ says: 'nothing tells whether the day or the month stands first in the dates: choose' });
  return 'not known';
}

function twoFigureYears(table: Table, columns: RegisterMapping['columns'], doubts: Doubt[]): void {
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

function rowsPerPersonOf(
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
