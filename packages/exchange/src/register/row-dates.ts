/** Dates of one row: each cell is read, and complained of, once. */
import { type Day, longDate, shortDate } from '@twelvemonth/clinical';
import { readDate } from './cell-date.ts';
import type { Report } from './problem.ts';
import { type Column, type Sheet, cellOf } from './sheet.ts';
import type { TableRow } from './table.ts';

export type RowReading = {
  readonly sheet: Sheet;
  readonly row: TableRow;
  readonly report: Report;
  /** Dates already read, by column. */
  readonly dates: Map<number, Day | undefined>;
};

/** A cell's text; undefined where the mapping says that it means nothing. */
export function textIn(reading: RowReading, column: Column): string | undefined {
  const cell = cellOf(reading.row.cells, column);
  return reading.sheet.isBlank(cell) ? undefined : cell;
}

/** The day in a date cell; undefined where it is empty or cannot be read as one day (which is then reported). */
export function dayIn(reading: RowReading, column: Column): Day | undefined {
  if (reading.dates.has(column.index)) return reading.dates.get(column.index);
  const text = textIn(reading, column);
  const day = text === undefined ? undefined : readDay(reading, column, text);
  reading.dates.set(column.index, day);
  return day;
}

function readDay(reading: RowReading, column: Column, text: string): Day | undefined {
  const { report, sheet } = reading;
  const read = readDate(text, { order: orderOf(sheet, column), use: 'event', today: sheet.today });
  switch (read.read) {
    case 'date':
      if (read.day <= sheet.today) return read.day;
      report(
        column.name,
        'in-the-future',
        text,
        `${text} would be ${longDate(read.day)}, which has not come yet`,
        'correct the date; what is only planned is not brought in',
      );
      return undefined;
    case 'part':
      report(
        column.name,
        'date-in-part',
        text,
        `${text} says no day`,
        'look the day up and write the whole date, or clear the cell',
      );
      return undefined;
    case 'two dates':
      report(
        column.name,
        'two-dates',
        text,
        `${text} could be ${shortDate(read.first)} or ${shortDate(read.second)}`,
        'write the month as a word',
      );
      return undefined;
    case 'no such date':
      report(
        column.name,
        'no-such-date',
        text,
        `${text} is not a date that exists${sheet.mapping.dateOrder === 'not known' ? '' : `, read as ${sheet.mapping.dateOrder}`}`,
        'look it up and correct the cell',
      );
      return undefined;
    case 'day number':
      report(
        column.name,
        'day-number',
        text,
        `${text} is a spreadsheet's count of days; in the usual count it would be ${shortDate(read.day)}`,
        'show the column as dates in the spreadsheet and save it again',
      );
      return undefined;
    case 'not a date':
      report(
        column.name,
        'date-not-read',
        text,
        `"${text}" cannot be read as a date`,
        'write the date as figures or with the month as a word, or clear the cell',
      );
      return undefined;
  }
}

/** The order to read this column in: none where the column itself contradicts the mapping. */
export const orderOf = (sheet: Sheet, column: Column) =>
  sheet.mixedOrders.has(column.index) ? 'not known' : sheet.mapping.dateOrder;
