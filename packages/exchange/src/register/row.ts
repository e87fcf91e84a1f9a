/** One row read: who, which facts, which words, what is wrong. Knows nothing of other rows or of the notes. */
import { isSignedFigure, startsLikeFormula } from './cell-words.ts';
import type { Fact } from './fact.ts';
import { isDateMeaning } from './header-words.ts';
import { type RowProblem, reportInto } from './problem.ts';
import { type RowReading } from './row-dates.ts';
import { readEvents } from './row-events.ts';
import { type RowPerson, readPerson } from './row-person.ts';
import { readMeasures } from './row-results.ts';
import { type Sheet, cellOf } from './sheet.ts';
import type { TableRow } from './table.ts';

export type RowRead = {
  readonly row: number;
  readonly tableRow: TableRow;
  readonly person: RowPerson;
  readonly facts: readonly Fact[];
  readonly words: readonly string[];
  readonly problems: RowProblem[];
};

// A replacement sign shows that letters were lost on the way; other control characters no register writes.
// oxlint-disable-next-line no-control-regex
const brokenCharacters = /[\uFFFD\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F]/;

export function readRow(sheet: Sheet, tableRow: TableRow): RowRead {
  const problems: RowProblem[] = [];
  const report = reportInto(problems, tableRow.row);
  const reading: RowReading = { sheet, row: tableRow, report, dates: new Map() };
  if (tableRow.beyond.length > 0) {
    report(
      '',
      'too-many-cells',
      tableRow.beyond.join(' '),
      'the row has more cells than the header has columns: a separator stands inside a cell',
      'put the cell in quotation marks, or correct the row',
    );
  }
  for (const column of sheet.columns) {
    if (column.meaning === 'ignore') continue;
    const cell = cellOf(tableRow.cells, column);
    if (brokenCharacters.test(cell)) {
      report(
        column.name,
        'broken-characters',
        cell,
        'letters of this cell were lost when the file was saved',
        'save the file as CSV UTF-8, or correct the cell',
      );
    }
    const asText = column.measure === undefined && !isDateMeaning(column.meaning) && column.meaning !== 'birth date';
    if (asText && startsLikeFormula(cell) && !isSignedFigure(cell) && !sheet.isBlank(cell)) {
      report(
        column.name,
        'formula-text',
        cell,
        'the cell begins like a spreadsheet formula; it is kept as text and never run',
        'check that it is what was meant',
      );
    }
  }
  const person = readPerson(reading);
  const measures = readMeasures(reading);
  const events = readEvents(reading);
  return {
    row: tableRow.row,
    tableRow,
    person,
    facts: [...events.facts, ...measures.facts],
    words: [...events.words, ...measures.words],
    problems,
  };
}
