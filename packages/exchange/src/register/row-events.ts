/** What a row says happened: doses, operations, fractures, allergies, teeth, death. */
import type { Day } from '@twelvemonth/clinical';
import { readDate } from './cell-date.ts';
import { allergyOf, dentalOf, fractureSiteOf, medicineOf } from './cell-words.ts';
import type { Fact } from './fact.ts';
import type { Meaning } from './mapping.ts';
import { type RowReading, dayIn, textIn } from './row-dates.ts';
import type { RowFacts } from './row-results.ts';
import { type Column, columnsMeaning, nearestColumn } from './sheet.ts';

const doseDates: readonly Meaning[] = [
  'dose 1 date',
  'dose 2 date',
  'dose 3 date',
  'dose 4 date',
  'dose 5 date',
  'dose 6 date',
  'dose date',
  'last dose date',
];
const datesWithBatch: readonly Meaning[] = [...doseDates, 'denosumab date'];

export function readEvents(reading: RowReading): RowFacts {
  const words: string[] = [];
  const facts: Fact[] = [...readDoses(reading, words), ...readBones(reading), ...readWords(reading, words)];
  for (const column of columnsMeaning(reading.sheet, 'note')) {
    const text = textIn(reading, column);
    if (text !== undefined) words.push(`${column.name}: ${text}`);
  }
  return { facts, words };
}

const place = (reading: RowReading, column: Column, cell: string) => ({
  row: reading.row.row,
  column: column.name,
  cell,
});

function readDoses(reading: RowReading, words: string[]): Fact[] {
  const { sheet, report } = reading;
  const facts: Fact[] = [];
  const batches = new Map<number, string>();
  for (const column of columnsMeaning(sheet, 'dose batch')) {
    const text = textIn(reading, column);
    const of = nearestColumn(sheet, column, datesWithBatch);
    if (text === undefined) continue;
    if (of !== undefined && textIn(reading, of) !== undefined) batches.set(of.index, text);
    else {
      words.push(`${column.name}: ${text}`);
      report(
        column.name,
        'value-without-date',
        text,
        'a batch without the date of its dose cannot be traced',
        'add the date of the dose',
      );
    }
  }
  const medicines = columnsMeaning(sheet, 'dose medicine');
  const lastDoseColumns = columnsMeaning(sheet, 'last dose date');
  for (const column of columnsMeaning(sheet, ...doseDates, 'denosumab date')) {
    const text = textIn(reading, column);
    const on = dayIn(reading, column);
    if (text === undefined || on === undefined) continue;
    const medicineColumn =
      column.meaning === 'denosumab date'
        ? undefined
        : medicines.length === 1
          ? medicines[0]
          : nearestColumn(sheet, column, ['dose medicine']);
    const medicineText = medicineColumn === undefined ? undefined : textIn(reading, medicineColumn);
    const medicine =
      column.meaning === 'denosumab date'
        ? 'denosumab 60 mg'
        : medicineText === undefined
          ? 'zoledronic acid 5 mg'
          : medicineOf(medicineText);
    if (medicine === undefined && medicineColumn !== undefined) {
      report(
        medicineColumn.name,
        'medicine-not-read',
        medicineText ?? '',
        `"${medicineText}" is not a medicine and strength this service records`,
        'write the generic name and the strength, or leave the row out',
      );
      continue;
    }
    if (medicine === undefined) continue;
    if (
      lastDoseColumns.includes(column) &&
      facts.some((fact) => fact.kind === 'dose' && fact.on === on && fact.body.medicine === medicine)
    )
      continue;
    const batch = batches.get(column.index);
    facts.push({
      kind: 'dose',
      body: { medicine, setting: sheet.mapping.dosesGiven, ...(batch === undefined ? {} : { batch }) },
      on,
      ...place(reading, column, text),
    });
  }
  checkLastDose(reading, facts, lastDoseColumns);
  return facts;
}

function checkLastDose(reading: RowReading, facts: readonly Fact[], lastDoseColumns: readonly Column[]): void {
  for (const column of lastDoseColumns) {
    const on = dayIn(reading, column);
    if (on === undefined || !facts.some((fact) => fact.kind === 'dose' && (fact.on ?? 0) > on)) continue;
    reading.report(
      column.name,
      'last-dose-not-the-last',
      textIn(reading, column) ?? '',
      'another column of this row has a later dose',
      'check which is right',
    );
  }
}

function readBones(reading: RowReading): Fact[] {
  const { sheet, report } = reading;
  const facts: Fact[] = [];
  let repair: Day | undefined;
  for (const column of columnsMeaning(sheet, 'hip repair date')) {
    const on = dayIn(reading, column);
    if (on === undefined) continue;
    repair = Math.max(on, repair ?? on) as Day;
    facts.push({
      kind: 'surgery',
      body: { what: 'hip repair' },
      on,
      ...place(reading, column, textIn(reading, column) ?? ''),
    });
  }
  for (const column of columnsMeaning(sheet, 'fracture site')) {
    const text = textIn(reading, column);
    const site = text === undefined ? 'none' : fractureSiteOf(text);
    if (text === undefined || site === 'none') continue;
    const dateColumn = nearestToRight(reading, column, 'fracture date');
    const dated = dateColumn === undefined ? undefined : dayIn(reading, dateColumn);
    if (dated === undefined)
      report(
        column.name,
        'value-without-date',
        text,
        'the day of the fracture is not told: it is written as not known, from before treatment',
        'if it happened on treatment, add the date',
      );
    const treated = site === 'hip' ? ({ treated: repair === undefined ? 'not known' : 'repaired' } as const) : {};
    facts.push({
      kind: 'fracture',
      body: {
        site,
        dateKnown: dated !== undefined,
        ...treated,
        ...(site === 'other' ? { bone: text.slice(0, 120), note: text } : {}),
      },
      on: dated ?? (site === 'hip' ? repair : undefined),
      ...place(reading, column, text),
    });
  }
  return facts;
}

function nearestToRight(reading: RowReading, column: Column, meaning: Meaning): Column | undefined {
  const candidates = columnsMeaning(reading.sheet, meaning);
  return (
    candidates.find((other) => other.index > column.index) ?? candidates.findLast((other) => other.index < column.index)
  );
}

/** A date standing inside a cell of words: "signed 3 Apr 2024". */
function dayWithin(reading: RowReading, text: string): Day | undefined {
  const match = /\d{1,4}[-/.]\d{1,2}[-/.]\d{2,4}|\d{1,2}(?:st|nd|rd|th)? [A-Za-z]{3,9} \d{4}/.exec(text);
  if (match === null) return undefined;
  const read = readDate(match[0], { order: reading.sheet.mapping.dateOrder, use: 'event', today: reading.sheet.today });
  return read.read === 'date' && read.day <= reading.sheet.today ? read.day : undefined;
}

function readWords(reading: RowReading, words: string[]): Fact[] {
  const { sheet, report } = reading;
  const facts: Fact[] = [];
  for (const column of columnsMeaning(sheet, 'allergy', 'consent', 'dental', 'died on')) {
    const text = textIn(reading, column);
    if (text === undefined) continue;
    const at = place(reading, column, text);
    if (column.meaning === 'died on') {
      const on = dayIn(reading, column);
      if (on !== undefined) facts.push({ kind: 'died', body: { source: 'register' }, on, ...at });
    } else if (column.meaning === 'allergy') {
      const body = allergyOf(text);
      if (body !== 'not asked') facts.push({ kind: 'allergy', body, on: undefined, ...at });
    } else if (column.meaning === 'dental') {
      const answer = dentalOf(text);
      const checkedOn = dayWithin(reading, text);
      if (answer !== undefined && (answer !== 'nothing pending' || checkedOn !== undefined))
        facts.push({ kind: 'dental', body: { answer, note: text }, on: checkedOn ?? sheet.today, ...at });
      else {
        words.push(`${column.name}: ${text}`);
        report(
          column.name,
          'word-not-read',
          text,
          `"${text}" says no finding with a date, and is not taken as one`,
          'ask again about teeth and jaw',
        );
      }
    } else {
      words.push(`${column.name}: ${text}`);
      report(
        column.name,
        'consent-not-brought-in',
        text,
        'consent is asked and recorded here; a register cannot give it',
        'ask for consent',
      );
    }
  }
  return facts;
}
