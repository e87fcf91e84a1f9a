/**
 * A first mapping of a file nobody has mapped yet. It is a suggestion for a person to confirm: whatever it inferred from
 * values rather than read in the headings is listed as a doubt, and where values fit two units no unit is put in.
 */
import { readDate } from './cell-date.ts';
import { readNumber } from './cell-number.ts';
import { medicineOf } from './cell-words.ts';
import {
  type Doubt,
  cellsIn,
  dateOrderOf,
  decimalOf,
  rowsPerPersonOf,
  share,
  twoFigureYears,
  usualBlanks,
} from './file-habits.ts';
import { isDateMeaning, meaningOfHeader, measureOf } from './header-words.ts';
import type { Meaning, RegisterMapping } from './mapping.ts';
import { unitsThatFit, type Measure } from '@twelvemonth/clinical';
import { dateColumnOf, sheetOf } from './sheet.ts';
import type { Table } from './table.ts';
import { unitInHeader } from './unit-words.ts';
import type { Day } from '@twelvemonth/clinical';

export type Suggestion = { readonly mapping: RegisterMapping; readonly doubts: readonly Doubt[] };

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
  const mapping: RegisterMapping = {
    version: 1,
    name: name.slice(0, 100) || 'register',
    separator: table.separator,
    decimal,
    dateOrder,
    rowsPerPerson: rowsPerPersonOf(table, columns, doubts),
    dosesGiven: 'this service',
    columns,
    blanks: [...usualBlanks],
  };
  lacking(table, mapping, doubts);
  return { mapping, doubts };
}

/** What a register usually tells and this one does not: said once, not on every row. */
function lacking(table: Table, mapping: RegisterMapping, doubts: Doubt[]): void {
  if (!mapping.columns.some(({ meaning }) => meaning === 'sex'))
    doubts.push({ says: 'no column holds the sex: kidney function cannot be said until it is asked' });
  const { sheet } = sheetOf(table, mapping, 0 as Day);
  for (const column of sheet.columns) {
    if (column.measure === undefined || column.measure === 'height' || dateColumnOf(sheet, column) !== undefined)
      continue;
    doubts.push({
      column: column.name,
      says: `no column holds the date of ${column.measure}: its values cannot count`,
    });
  }
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
