/** Who a row is about, as far as the row says it. */
import { longDate, plainDate } from '@twelvemonth/clinical';
import { plausibleBirth, readDate } from './cell-date.ts';
import { readName } from './cell-name.ts';
import { type Sex, type Tier, sexOf, tierOf } from './cell-words.ts';
import type { Meaning } from './mapping.ts';
import { plausibleAge } from './plausible.ts';
import { type RowReading, dayIn, orderOf, textIn } from './row-dates.ts';
import { type Column, columnsMeaning } from './sheet.ts';
import type { Day } from '@twelvemonth/clinical';

export type RowPerson = {
  readonly number: string | undefined;
  readonly title: string | undefined;
  readonly family: string | undefined;
  readonly given: string | undefined;
  readonly formerNames: readonly string[];
  /** `1941-06-02`, `1941-06` or `1941`. */
  readonly born: string | undefined;
  readonly sex: Sex | undefined;
  readonly telephone: string | undefined;
  readonly address: string | undefined;
  readonly familyDoctor: string | undefined;
  readonly referredOn: Day | undefined;
  readonly referredBy: string | undefined;
  readonly reason: string | undefined;
  readonly tier: Tier | undefined;
};

export function readPerson(reading: RowReading): RowPerson {
  const text = (meaning: Meaning): string | undefined => {
    const column = columnsMeaning(reading.sheet, meaning)[0];
    return column === undefined ? undefined : textIn(reading, column);
  };
  const names = readNames(reading, text);
  const number = text('number');
  if (number === undefined)
    reading.report(
      columnsMeaning(reading.sheet, 'number')[0]?.name ?? '',
      'number-missing',
      '',
      'the row has no number for the person',
      'add the number the service knows the person by, or leave the row out',
    );
  const referred = columnsMeaning(reading.sheet, 'referred on')[0];
  return {
    number,
    ...names,
    formerNames: columnsMeaning(reading.sheet, 'former name').flatMap((column) => textIn(reading, column) ?? []),
    born: readBirth(reading),
    sex: readSex(reading),
    telephone: text('telephone'),
    address: text('address'),
    familyDoctor: text('family doctor'),
    referredOn: referred === undefined ? undefined : dayIn(reading, referred),
    referredBy: text('referred by'),
    reason: text('reason'),
    tier: readTier(reading),
  };
}

function readNames(
  reading: RowReading,
  text: (meaning: Meaning) => string | undefined,
): Pick<RowPerson, 'title' | 'family' | 'given'> {
  const whole = columnsMeaning(reading.sheet, 'full name')[0];
  const [family, given] = [text('family name'), text('given name')];
  if (family !== undefined && given !== undefined) return { title: text('title'), family, given };
  const cell = whole === undefined ? undefined : textIn(reading, whole);
  const read = cell === undefined ? undefined : readName(cell);
  if (whole === undefined || cell === undefined || read === undefined) {
    const column = whole ?? columnsMeaning(reading.sheet, family === undefined ? 'family name' : 'given name')[0];
    reading.report(
      column?.name ?? '',
      'name-missing',
      cell ?? '',
      cell === undefined ? 'part of the name is missing' : `"${cell}" holds only one name`,
      'write family name and given name, divided by a comma where they share a cell',
    );
    return { title: text('title'), family, given };
  }
  if (read.supposed)
    reading.report(
      whole.name,
      'name-order-supposed',
      cell,
      `"${cell}" is taken as family name ${read.family}, given name ${read.given}`,
      'if it is the other way round, correct the cell: family name, comma, given name',
    );
  return { title: text('title') ?? read.title, family: read.family, given: read.given };
}

function readBirth(reading: RowReading): string | undefined {
  const column = columnsMeaning(reading.sheet, 'birth date')[0];
  if (column === undefined) return undefined;
  const { report, sheet } = reading;
  const text = textIn(reading, column);
  if (text === undefined) {
    report(
      column.name,
      'birth-date-missing',
      '',
      'there is no birth date',
      'look it up; if only the year is known, write the year',
    );
    return undefined;
  }
  const read = readDate(text, { order: orderOf(sheet, column), use: 'birth', today: sheet.today });
  switch (read.read) {
    case 'date':
      return checkedAge(reading, column, text, read.day) ? plainDate(read.day) : undefined;
    case 'part':
      report(
        column.name,
        'birth-date-in-part',
        text,
        `only ${read.text} is known of the birth date; it is kept so, and kidney function cannot be said until it is whole`,
        'ask for the whole date',
      );
      return read.text;
    case 'two dates':
      report(
        column.name,
        'two-dates',
        text,
        `${text} could be ${longDate(read.first)} or ${longDate(read.second)}`,
        'write the month as a word',
      );
      return undefined;
    case 'day number':
      report(
        column.name,
        'day-number',
        text,
        `${text} is a spreadsheet's count of days; in the usual count it would be ${longDate(read.day)}`,
        'show the column as dates in the spreadsheet and save it again',
      );
      return undefined;
    case 'no such date':
      report(
        column.name,
        'no-such-date',
        text,
        `${text} is not a birth date that can be`,
        'look it up and correct the cell',
      );
      return undefined;
    case 'not a date':
      report(
        column.name,
        'date-not-read',
        text,
        `"${text}" cannot be read as a date`,
        'write the date as figures or with the month as a word',
      );
      return undefined;
  }
}

function checkedAge(reading: RowReading, column: Column, text: string, birth: Day): boolean {
  const age = plausibleBirth(birth, reading.sheet.today);
  if (age === 'in the future')
    reading.report(
      column.name,
      'in-the-future',
      text,
      `born on ${longDate(birth)}, which has not come yet`,
      'look it up and correct the cell',
    );
  else if (age === 'too old')
    reading.report(
      column.name,
      'age-implausible',
      text,
      `born on ${longDate(birth)}: older than ${plausibleAge.most}`,
      'look it up and correct the cell',
    );
  else if (age === 'too young')
    reading.report(
      column.name,
      'very-young',
      text,
      `born on ${longDate(birth)}: younger than ${plausibleAge.least}`,
      'check the birth date',
    );
  return age === 'usual' || age === 'too young';
}

function readSex(reading: RowReading): Sex | undefined {
  const column = columnsMeaning(reading.sheet, 'sex')[0];
  if (column === undefined) return undefined;
  const text = textIn(reading, column);
  const sex = text === undefined ? 'not said' : sexOf(text);
  if (sex === undefined) {
    reading.report(
      column.name,
      'sex-not-read',
      text ?? '',
      `"${text}" is not a word for a sex that is known here`,
      'write female or male, or clear the cell',
    );
    return undefined;
  }
  if (sex !== 'not said') return sex;
  reading.report(
    column.name,
    'sex-not-known',
    text ?? '',
    'sex is not recorded; kidney function cannot be said until it is',
    'ask, and correct the identity',
  );
  return undefined;
}

function readTier(reading: RowReading): Tier | undefined {
  const column = columnsMeaning(reading.sheet, 'tier')[0];
  const text = column === undefined ? undefined : textIn(reading, column);
  if (column === undefined || text === undefined) return undefined;
  const tier = tierOf(text);
  if (tier === undefined)
    reading.report(
      column.name,
      'word-not-read',
      text,
      `"${text}" is not a degree of urgency that is known here; routine is written`,
      'correct it at triage',
    );
  return tier;
}
