/**
 * A mapping laid over a table: which column is what, which date belongs to which value, and what the mapping still lacks
 * before anything can be taken in.
 */
import { type Day, type Measure } from '@twelvemonth/clinical';
import { orderTold } from './cell-date.ts';
import { readNumber } from './cell-number.ts';
import { isDateMeaning, measureOf } from './header-words.ts';
import type { Meaning, RegisterMapping } from './mapping.ts';
import type { Table } from './table.ts';
import { unitFromText } from './unit-words.ts';

export type Column = {
  readonly index: number;
  readonly name: string;
  readonly meaning: Meaning;
  readonly measure: Measure | undefined;
  readonly unit: string | undefined;
};

export type Sheet = {
  readonly table: Table;
  readonly mapping: RegisterMapping;
  readonly today: Day;
  readonly columns: readonly Column[];
  readonly isBlank: (cell: string) => boolean;
  /** Columns whose dates are written both ways round: a date that could be two dates is two dates there. */
  readonly mixedOrders: ReadonlySet<number>;
};

export type MappingProblem = { readonly column?: string; readonly says: string; readonly remedy: string };

const manyAllowed: readonly Meaning[] = [
  'ignore',
  'note',
  'dose date',
  'dose medicine',
  'dose batch',
  'denosumab date',
  'bloods date',
  'creatinine',
  'creatinine date',
  'adjusted calcium',
  'calcium',
  'calcium date',
  'albumin',
  'vitamin D',
  'vitamin D date',
  'egfr',
  'weight',
  'weight date',
  'fracture site',
  'fracture date',
  'hip repair date',
  'former name',
];

const plainWord = (text: string): string => text.trim().toLowerCase();

export function sheetOf(
  table: Table,
  mapping: RegisterMapping,
  today: Day,
): { readonly sheet: Sheet; readonly problems: readonly MappingProblem[] } {
  const problems: MappingProblem[] = [];
  const indexByName = new Map(table.header.map((name, index) => [plainWord(name), index]));
  const columns: Column[] = [];
  for (const { column, meaning, unit } of mapping.columns) {
    const index = indexByName.get(plainWord(column));
    if (index === undefined) {
      if (meaning !== 'ignore')
        problems.push({
          column,
          says: `the file has no column "${column}"`,
          remedy: 'take it out of the mapping, or choose the mapping that fits this file',
        });
      continue;
    }
    const measure = measureOf(meaning);
    const known =
      measure === undefined || unit === undefined || unit.trim() === '' ? undefined : unitFromText(measure, unit);
    if (measure !== undefined && unit !== undefined && unit.trim() !== '' && known === undefined) {
      problems.push({
        column,
        says: `"${unit}" is not a unit of ${measure}`,
        remedy: 'choose one of the units offered',
      });
    }
    columns.push({
      index,
      name: table.header[index] ?? column,
      meaning,
      measure,
      unit: known ?? (measure === 'egfr' ? 'mL/min/1.73m2' : undefined),
    });
  }
  const blanks = new Set(mapping.blanks.map(plainWord));
  const isBlank = (cell: string): boolean => cell.trim() === '' || blanks.has(plainWord(cell));
  const mixedOrders = new Set(
    columns.filter((column) => isMixed(table, column, mapping)).map((column) => column.index),
  );
  const sheet: Sheet = {
    table,
    mapping,
    today,
    columns: columns.toSorted((a, b) => a.index - b.index),
    isBlank,
    mixedOrders,
  };
  return { sheet, problems: [...problems, ...lacking(sheet)] };
}

/** Share of the telling dates in the other order from which a column counts as written both ways. Common practice, no source. */
const mixedShare = 0.05;

/** Dates in the other order than the mapping's, and not just a slip, prove that the column was not written one way. */
function isMixed(table: Table, column: Column, mapping: RegisterMapping): boolean {
  if (!isDateMeaning(column.meaning)) return false;
  const against =
    mapping.dateOrder === 'day month year'
      ? 'month first'
      : mapping.dateOrder === 'month day year'
        ? 'day first'
        : undefined;
  if (against === undefined) return false;
  const told = table.rows
    .map((row) => orderTold(row.cells[column.index] ?? ''))
    .filter((order) => order === 'day first' || order === 'month first');
  const contrary = told.filter((order) => order === against).length;
  return contrary > 1 && contrary >= told.length * mixedShare;
}

function lacking(sheet: Sheet): readonly MappingProblem[] {
  const problems: MappingProblem[] = [];
  const has = (meaning: Meaning): boolean => sheet.columns.some((column) => column.meaning === meaning);
  if (!has('number'))
    problems.push({ says: 'no column holds the number people are known by', remedy: 'say which column it is' });
  if (!has('full name') && !(has('family name') && has('given name')))
    problems.push({
      says: 'no column holds the name',
      remedy: 'say which column holds the whole name, or which two hold family name and given name',
    });
  if (!has('birth date')) problems.push({ says: 'no column holds the birth date', remedy: 'say which column it is' });
  const seen = new Map<Meaning, string>();
  for (const { meaning, name } of sheet.columns) {
    const other = seen.get(meaning);
    if (other !== undefined && !manyAllowed.includes(meaning))
      problems.push({
        column: name,
        says: `both "${other}" and "${name}" are read as ${meaning}`,
        remedy: 'choose one of them',
      });
    seen.set(meaning, other ?? name);
  }
  for (const column of sheet.columns) {
    const example =
      column.measure !== undefined && column.unit === undefined ? firstWithoutUnit(sheet, column) : undefined;
    if (example !== undefined)
      problems.push({
        column: column.name,
        says: `the unit of ${column.measure} is not known: "${example}" could be read in two ways`,
        remedy: 'choose the unit the laboratory or the scales use',
      });
  }
  if (sheet.mapping.dateOrder === 'not known') {
    const doubtful = sheet.columns.find(
      (column) =>
        isDateLike(column.meaning) &&
        sheet.table.rows.some((row) => orderTold(row.cells[column.index] ?? '') === 'either'),
    );
    if (doubtful !== undefined)
      problems.push({
        column: doubtful.name,
        says: 'nothing tells whether the day or the month stands first in the dates',
        remedy: 'say how this hospital writes dates',
      });
  }
  return problems;
}

const isDateLike = (meaning: Meaning): boolean => isDateMeaning(meaning);

function firstWithoutUnit(sheet: Sheet, column: Column): string | undefined {
  for (const row of sheet.table.rows) {
    const cell = row.cells[column.index] ?? '';
    if (sheet.isBlank(cell) || column.measure === undefined) continue;
    const read = readNumber(cell, column.measure, sheet.mapping.decimal);
    if ('value' in read && read.ownUnit === undefined) return cell;
  }
  return undefined;
}

export const cellOf = (cells: readonly string[], column: Column): string => cells[column.index] ?? '';

export const columnsMeaning = (sheet: Sheet, ...meanings: readonly Meaning[]): readonly Column[] =>
  sheet.columns.filter((column) => meanings.includes(column.meaning));

/** The nearest column to the left with one of these meanings, else the nearest to the right. */
export function nearestColumn(sheet: Sheet, to: Column, meanings: readonly Meaning[]): Column | undefined {
  const candidates = columnsMeaning(sheet, ...meanings);
  return (
    candidates.findLast((column) => column.index < to.index) ?? candidates.find((column) => column.index > to.index)
  );
}

const dateOfMeasure: Readonly<Partial<Record<Measure, Meaning>>> = {
  creatinine: 'creatinine date',
  'adjusted calcium': 'calcium date',
  calcium: 'calcium date',
  'vitamin D': 'vitamin D date',
  weight: 'weight date',
  height: 'weight date',
};

/** The column that dates a measured value: the measure's own, else (for results) the date of the bloods. */
export function dateColumnOf(sheet: Sheet, column: Column): Column | undefined {
  if (column.measure === undefined) return undefined;
  const own = dateOfMeasure[column.measure];
  const found = own === undefined ? undefined : nearestColumn(sheet, column, [own]);
  if (found !== undefined || column.measure === 'weight' || column.measure === 'height') return found;
  return nearestColumn(sheet, column, ['bloods date']);
}
