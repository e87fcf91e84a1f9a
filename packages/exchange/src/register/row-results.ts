/** Measured values of a row: laboratory results, weight, height. A value without a unit or a day is no fact. */
import { type Analyte, type BodyOfKind, type Day, quantityText, plausibility } from '@twelvemonth/clinical';
import { readNumber } from './cell-number.ts';
import type { Fact } from './fact.ts';
import { type RowReading, dayIn, textIn } from './row-dates.ts';
import { type Column, columnsMeaning, dateColumnOf } from './sheet.ts';

export type RowFacts = {
  readonly facts: readonly Fact[];
  /** Cells that say something no entry can hold; kept as words with the referral. */
  readonly words: readonly string[];
};

export function readMeasures(reading: RowReading): RowFacts {
  const facts: Fact[] = [];
  const words: string[] = [];
  for (const column of reading.sheet.columns) {
    const text = column.measure === undefined ? undefined : textIn(reading, column);
    if (column.measure === undefined || text === undefined) continue;
    const quantity = readQuantity(reading, column, text);
    if (quantity === undefined) continue;
    const dateColumn = dateColumnOf(reading.sheet, column);
    const on = dateColumn === undefined ? undefined : dayIn(reading, dateColumn);
    if (on === undefined && column.measure !== 'height') {
      if (dateColumn !== undefined && textIn(reading, dateColumn) !== undefined) continue; // the date is complained of
      words.push(`${column.name}: ${text}`);
      reading.report(
        column.name,
        'value-without-date',
        text,
        `${quantityText(quantity)} has no date and cannot count`,
        'add the date of the sample or of the weighing',
      );
      continue;
    }
    facts.push(factFrom(column, quantity, on, reading.row.row, text));
  }
  for (const column of columnsMeaning(
    reading.sheet,
    'bloods date',
    'creatinine date',
    'calcium date',
    'vitamin D date',
    'weight date',
  )) {
    if (textIn(reading, column) === undefined || dayIn(reading, column) === undefined) continue;
    const dated = reading.sheet.columns.filter((other) => dateColumnOf(reading.sheet, other) === column);
    if (dated.every((other) => textIn(reading, other) === undefined)) {
      reading.report(
        column.name,
        'date-without-value',
        textIn(reading, column) ?? '',
        'there is a date, and no value beside it',
        'add the values, or clear the date',
      );
    }
  }
  return { facts, words };
}

type AnyQuantity = {
  readonly comparator: BodyOfKind<'weight'>['quantity']['comparator'];
  readonly value: string;
  readonly unit: string;
};

function factFrom(column: Column, quantity: AnyQuantity, on: Day | undefined, row: number, cell: string): Fact {
  const place = { on, row, column: column.name, cell };
  if (column.measure === 'weight')
    return {
      kind: 'weight',
      body: { quantity: quantity as BodyOfKind<'weight'>['quantity'], method: 'reported' },
      ...place,
    };
  if (column.measure === 'height')
    return {
      kind: 'height',
      body: { quantity: quantity as BodyOfKind<'height'>['quantity'], which: 'measured now' },
      ...place,
    };
  return {
    kind: 'result',
    body: { analyte: column.measure as Analyte, quantity: quantity as BodyOfKind<'result'>['quantity'] },
    ...place,
  };
}

function readQuantity(reading: RowReading, column: Column, text: string): AnyQuantity | undefined {
  const { report, sheet } = reading;
  const measure = column.measure;
  if (measure === undefined) return undefined;
  const read = readNumber(text, measure, sheet.mapping.decimal);
  if ('problem' in read) {
    report(column.name, read.problem, text, read.says, read.remedy);
    return undefined;
  }
  const unit = read.ownUnit ?? column.unit;
  if (unit === undefined) {
    report(
      column.name,
      'unit-not-known',
      text,
      `the unit of ${measure} is not known`,
      'choose the unit of the column, or write it in the cell',
    );
    return undefined;
  }
  if (read.converted !== undefined)
    report(column.name, 'converted', text, read.converted, 'nothing to do if that is right');
  const { sits, betterAs } = plausibility(measure, unit, Number(read.value));
  if (read.comparator !== '' && (measure === 'weight' || measure === 'height')) {
    report(
      column.name,
      'number-not-read',
      text,
      `"${text}" is not a measured ${measure}`,
      'write the number that was measured, or clear the cell',
    );
    return undefined;
  }
  if (sits === 'impossible' && read.comparator === '') {
    report(
      column.name,
      betterAs === undefined ? 'impossible-value' : 'looks-like-other-unit',
      text,
      betterAs === undefined
        ? `${text} cannot be ${measure} in ${unit}`
        : `${text} cannot be ${measure} in ${unit}; it looks like ${betterAs}`,
      betterAs === undefined ? 'look it up and correct the cell' : `check it; if so, write "${read.value} ${betterAs}"`,
    );
    return undefined;
  }
  if (sits === 'unusual' && read.comparator === '') {
    report(
      column.name,
      'unusual-value',
      text,
      `${text} ${unit} is unusual for ${measure}${betterAs === undefined ? '' : `; in ${betterAs} it would be usual`}`,
      'check the value and the unit',
    );
  }
  return { comparator: read.comparator, value: read.value, unit };
}
