/** The rows of one number put together as one person, or the reasons why they cannot be. */
import { type BodyOfKind, type Day, parseDay, parsePartialDate, plainDate, shortDate } from '@twelvemonth/clinical';
import { type Fact, keyOfFact, resultKey } from './fact.ts';
import { dosesNearDays, firstYearOf } from './plausible.ts';
import { type Report, reportInto } from './problem.ts';
import type { RowRead } from './row.ts';
import type { RowPerson } from './row-person.ts';
import { type PersonName, samePerson } from './similar.ts';
import { checkWeights } from './weights.ts';

export type PersonRead = {
  readonly key: string;
  readonly rows: readonly RowRead[];
  readonly said: RowPerson;
  /** Name, number and birth date, where the rows say them all. */
  readonly name: PersonName | undefined;
  /** Each fact once, in the order of the rows. */
  readonly facts: readonly Fact[];
  readonly words: readonly string[];
};

const reportOf = (row: RowRead): Report => reportInto(row.problems, row.row);

/** The first row that says something says it for all. */
function merged(rows: readonly RowRead[]): RowPerson {
  const first = <Key extends keyof RowPerson>(key: Key): RowPerson[Key] =>
    (rows.find(({ person }) => person[key] !== undefined) ?? rows[0])?.person[key] as RowPerson[Key];
  return {
    number: first('number'),
    title: first('title'),
    family: first('family'),
    given: first('given'),
    formerNames: [...new Set(rows.flatMap(({ person }) => person.formerNames))],
    born: longestBirth(rows),
    sex: first('sex'),
    telephone: first('telephone'),
    address: first('address'),
    familyDoctor: first('familyDoctor'),
    referredOn: first('referredOn'),
    referredBy: first('referredBy'),
    reason: first('reason'),
    tier: first('tier'),
  };
}

const longestBirth = (rows: readonly RowRead[]): string | undefined =>
  rows.flatMap(({ person }) => person.born ?? []).toSorted((a, b) => b.length - a.length)[0];

const nameOf = (person: RowPerson): PersonName | undefined =>
  person.number === undefined || person.family === undefined || person.given === undefined || person.born === undefined
    ? undefined
    : {
        number: person.number,
        family: person.family,
        given: person.given,
        formerNames: person.formerNames,
        born: person.born,
      };

export function readTogether(key: string, rows: readonly RowRead[]): PersonRead {
  const said = merged(rows);
  checkAgreement(rows);
  const facts = new Map<string, Fact>();
  for (const fact of rows.flatMap((row) => row.facts)) {
    const existing = facts.get(keyOfFact(fact));
    if (existing === undefined) facts.set(keyOfFact(fact), fact);
    else if (existing.kind === 'dose' && fact.kind === 'dose' && existing.body.batch === undefined)
      facts.set(keyOfFact(fact), fact);
  }
  const all = [...facts.values()];
  const rowOf = (fact: Fact): Report => reportOf(rows.find(({ row }) => row === fact.row) as RowRead);
  checkContradictions(all, rowOf);
  checkDoses(all, rowOf);
  checkAgainstBirth(all, said.born, rowOf);
  checkAgainstDeath(all, rowOf);
  checkWeights(all, [], rowOf);
  return { key, rows, said, name: nameOf(said), facts: all, words: [...new Set(rows.flatMap((row) => row.words))] };
}

/** Rows of one number that name two people all wait: nobody can say whose facts they are. */
function checkAgreement(rows: readonly RowRead[]): void {
  for (const row of rows.slice(1)) {
    const [first, other] = [rows[0], row];
    if (first === undefined) return;
    const [a, b] = [nameOf(first.person), nameOf(other.person)];
    const sexes =
      first.person.sex !== undefined && other.person.sex !== undefined && first.person.sex !== other.person.sex;
    if (!sexes && (a === undefined || b === undefined || samePerson(a, b))) continue;
    reportOf(other)(
      '',
      'rows-disagree',
      '',
      `row ${first.row} has the same number with ${sexes ? 'another sex' : 'another name or birth date'}`,
      'correct the row that is wrong',
    );
  }
}

function checkContradictions(facts: readonly Fact[], report: (fact: Fact) => Report): void {
  const seen = new Map<string, Fact>();
  for (const fact of facts) {
    if (fact.kind !== 'result' || fact.on === undefined) continue;
    const key = resultKey(plainDate(fact.on), fact.body.analyte);
    const other = seen.get(key);
    if (other !== undefined)
      report(fact)(
        fact.column,
        'rows-disagree',
        fact.cell,
        `row ${other.row} gives another ${fact.body.analyte} for ${shortDate(fact.on)}: ${other.cell}`,
        'look up which is right and correct the other',
      );
    seen.set(key, fact);
  }
}

type Dose = Extract<Fact, { kind: 'dose' }>;

function checkDoses(facts: readonly Fact[], report: (fact: Fact) => Report): void {
  const doses = facts
    .filter((fact): fact is Dose & { on: Day } => fact.kind === 'dose' && fact.on !== undefined)
    .toSorted((a, b) => a.on - b.on);
  const lastOf = new Map<string, Dose & { on: Day }>();
  for (const dose of doses) {
    const { medicine } = dose.body;
    const year = Number(plainDate(dose.on).slice(0, 4));
    if (year < (firstYearOf[medicine] ?? 0))
      report(dose)(
        dose.column,
        'before-the-medicine',
        dose.cell,
        `${medicine} was not yet given in ${year}`,
        'look up the date, or the medicine',
      );
    const last = lastOf.get(medicine);
    const least =
      medicine === 'zoledronic acid 5 mg' ? dosesNearDays : medicine === 'denosumab 60 mg' ? dosesNearDays / 2 : 0;
    if (last !== undefined && dose.on - last.on < least)
      report(dose)(
        dose.column,
        'doses-near',
        dose.cell,
        `only ${dose.on - last.on} days after the dose of ${shortDate(last.on)}`,
        'check that these are two doses and not one dose written twice',
      );
    lastOf.set(medicine, dose);
  }
}

function checkAgainstBirth(facts: readonly Fact[], born: string | undefined, report: (fact: Fact) => Report): void {
  const birth = born === undefined ? undefined : parsePartialDate(born);
  const first =
    birth === undefined ? undefined : birth.precision === 'day' ? birth.day : parseDay(`${birth.year}-01-01`);
  if (first === undefined) return;
  for (const fact of facts) {
    if (fact.on !== undefined && fact.on < first)
      report(fact)(
        fact.column,
        'before-birth',
        fact.cell,
        `${fact.cell} lies before the birth date`,
        'correct the date or the birth date',
      );
  }
}

function checkAgainstDeath(facts: readonly Fact[], report: (fact: Fact) => Report): void {
  const died = facts.find((fact) => fact.kind === 'died')?.on;
  if (died === undefined) return;
  for (const fact of facts) {
    if (fact.on !== undefined && fact.on > died)
      report(fact)(
        fact.column,
        'after-death',
        fact.cell,
        `${fact.cell} lies after the day of death, ${shortDate(died)}`,
        'correct the date that is wrong',
      );
  }
}

/** The body of the identity entry; undefined where something it needs is missing (which is then reported). */
export function identityOf(said: RowPerson): BodyOfKind<'identity'> | undefined {
  const name = nameOf(said);
  if (name === undefined) return undefined;
  return {
    family: name.family,
    given: name.given,
    ...(said.title === undefined ? {} : { title: said.title }),
    ...(said.formerNames.length === 0 ? {} : { formerNames: said.formerNames }),
    born: name.born,
    ...(said.sex === undefined ? {} : { sex: said.sex }),
    number: name.number,
  };
}
