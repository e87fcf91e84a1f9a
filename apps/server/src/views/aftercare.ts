/** Aftercare: who is to be asked how they are, what was told and may not wait, what a scheme may want to know of. */
import {
  type Aftercare,
  type Day,
  type Fact,
  type UnitCalendar,
  addDays,
  aftercareOf,
  dateWithWeekday,
  day,
  entryText,
  everyDay,
  factsOf,
  isAdviceLineDay,
  noContactWanted,
  notAsked,
  plainDate,
  plural,
  redFlagsOfEntry,
  shortDate,
} from '@twelvemonth/clinical';
import type { AftercareOfPersonView, AftercareRow, AftercareView } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import type { Person } from '../register/people.ts';
import type { UnitNow } from '../register/units.ts';
import { bornInWords, fullName } from './person-words.ts';
import { speakToInWords } from './speak-to.ts';

/** How far ahead the list looks, and how far back it shows what was asked: a week, a list's length (common practice, no source). */
const SHOWN_DAYS = 7;

const over: ReadonlySet<string> = new Set(['died', 'closed']);

export function aftercareViewOf(atHand: AtHand, everyone: readonly Person[], unit: UnitNow): AftercareView {
  const here = everyone.filter(({ unitId, standing }) => unitId === unit.unit.id && !over.has(standing.standing));
  const rows = here.flatMap((person) => waitingRowOf(person) ?? []);
  return {
    unit: unit.unit.id,
    today: plainDate(unit.today),
    adviceLine: adviceLineOf(unit),
    people: rows
      .filter(({ tryOn, noCall }) => noCall === undefined && day(tryOn) <= addDays(unit.today, SHOWN_DAYS))
      .toSorted((a, b) => (a.tryOn < b.tryOn ? -1 : a.tryOn > b.tryOn ? 1 : a.name < b.name ? -1 : 1)),
    redFlags: here.flatMap(redFlagRowsOf),
    reports: here
      .flatMap((person) => reportRowsOf(person, 'severe ones'))
      .filter(({ reported }) => reported.length === 0),
    asked: here
      .flatMap((person) =>
        factsOf(person.record, 'aftercare')
          .filter(({ on }) => on > addDays(unit.today, -SHOWN_DAYS) && on <= unit.today)
          .map((fact) => ({ ...whoOf(person), ...toldOf(atHand, fact) })),
      )
      .toSorted((a, b) => (a.on < b.on ? 1 : a.on > b.on ? -1 : a.name < b.name ? -1 : 1)),
  };
}

export function aftercareOfPersonViewOf(atHand: AtHand, person: Person): AftercareOfPersonView {
  const { record, unit, today, identity } = person;
  const found = careAfter(person);
  const dose = found?.dose ?? factsOf(record, 'dose').findLast(({ body }) => body.setting !== 'elsewhere');
  const noCall = noCallOf(person);
  const numbers = unit?.protocol?.number;
  return {
    ...whoOf(person),
    seq: record.lastSeq,
    born: bornInWords(identity?.born),
    unit: {
      name: unit?.unit.name ?? '',
      telephone: unit?.unit.telephone ?? '',
      ...(unit?.unit.emergencyNumber === undefined ? {} : { emergencyNumber: unit.unit.emergencyNumber }),
    },
    today: plainDate(today),
    adviceLine: unit === undefined ? undefined : adviceLineOf(unit),
    ...(dose === undefined ? {} : { dose: { ...doseOf(dose), number: person.course.lifetime } }),
    waiting: waitingRowOf(person),
    ...(numbers === undefined
      ? {}
      : {
          limits: {
            feverTooHighCelsius: numbers.feverTooHighCelsius,
            feverTooLongDays: numbers.feverTooLongDays,
          },
        }),
    redFlags: redFlagRowsOf(person),
    told: [...factsOf(record, 'aftercare'), ...factsOf(record, 'red-flag-passed-on'), ...factsOf(record, 'reaction')]
      .toSorted((a, b) => b.seq - a.seq)
      .map((fact) => toldOf(atHand, fact)),
    reports: reportRowsOf(person, 'every one'),
    ...(noCall === undefined ? {} : { noCall }),
    cautions: [...(unit?.protocol?.sheet.cautions ?? [])],
  };
}

/** Since when a call is owed; undefined: none is, today. */
export function toBeAskedSince(person: Person): Day | undefined {
  const row = waitingRowOf(person);
  return row === undefined || row.noCall !== undefined || row.when === 'to come' ? undefined : day(row.tryOn);
}

const calendarOf = ({ unit }: Pick<Person, 'unit'>): UnitCalendar => unit?.unit.calendar ?? everyDay;
/** Once the recall for the next dose has begun it is asked in that talk, and stands on that list. */
const isAskedAtRecall = ({ course, today }: Person): boolean =>
  course.recall !== undefined && course.recall.from <= today;
/** What is asked after a first dose now; undefined: there is none, or it is asked at the recall. */
export const careAfter = (person: Person): Aftercare | undefined =>
  isAskedAtRecall(person)
    ? undefined
    : aftercareOf(person.record, person.unit?.protocol, calendarOf(person), person.today);

const adviceLineOf = ({ unit, today }: UnitNow): AftercareView['adviceLine'] =>
  unit.adviceLine === undefined
    ? undefined
    : { ...unit.adviceLine, weekdays: [...unit.adviceLine.weekdays], openToday: isAdviceLineDay(unit.calendar, today) };

const whoOf = (person: Person) => ({
  patient: person.patient,
  name: fullName(person),
  number: person.identity?.number ?? '',
  ...(person.contact?.telephone === undefined ? {} : { telephone: person.contact.telephone }),
  speakTo: speakToInWords(person),
});

const doseOf = ({ first, on, body }: Fact<'dose'>) => ({ entry: first, on: plainDate(on), medicine: body.medicine });
const toldOf = (atHand: AtHand, fact: Fact) => ({
  entry: fact.first,
  on: plainDate(fact.on),
  text: entryText(fact),
  by: atHand.accounts.nameOf(fact.author.staff),
});

function noCallOf({ record, today, standing }: Person): string | undefined {
  if (standing.standing === 'died') return 'This person has died: nobody rings.';
  const no = noContactWanted(record, today);
  return no === undefined ? undefined : `They said no to all contact on ${shortDate(no.on)}: nobody rings.`;
}

function waitingRowOf(person: Person): AftercareRow | undefined {
  const found = careAfter(person);
  if (found?.waitsFor === undefined || found.tryOn === undefined || over.has(person.standing.standing))
    return undefined;
  const { dose, contacts, attempts, broken, waitsFor, tryOn } = found;
  const { today } = person;
  const last = attempts.at(-1);
  const cut = broken.at(-1);
  const noCall = noCallOf(person);
  return {
    ...whoOf(person),
    dose: doseOf(dose),
    from: plainDate(waitsFor.from),
    by: plainDate(waitsFor.by),
    tryOn: plainDate(tryOn),
    when: tryOn > today ? 'to come' : waitsFor.by < today ? 'overdue' : 'today',
    contact: contacts.findIndex(({ from }) => from === waitsFor.from) + 1,
    attempts: attempts.length,
    ...(last === undefined ? {} : { lastAttempt: attemptInWords(last) }),
    ...(cut === undefined || cut.body.outcome !== 'asked' ? {} : { notAsked: plural(notAsked(cut.body), 'and') }),
    ...(noCall === undefined ? {} : { noCall }),
  };
}

const attemptInWords = ({ on, body }: Fact<'call'>): string =>
  [
    `${shortDate(on)}, ${body.route}: not reached`,
    body.note,
    body.callBackOn === undefined ? undefined : `try again on ${dateWithWeekday(day(body.callBackOn))}`,
  ]
    .filter((part) => part !== undefined)
    .join('; ');

function redFlagRowsOf(person: Person): AftercareView['redFlags'] {
  const passedOn = new Set(factsOf(person.record, 'red-flag-passed-on').map(({ body }) => body.about));
  return factsOf(person.record, 'aftercare').flatMap((fact) => {
    const flags =
      passedOn.has(fact.first) || passedOn.has(fact.id)
        ? []
        : redFlagsOfEntry(fact, person.unit?.protocol?.number).map((flag) => ({ ...flag }));
    return flags.length === 0
      ? []
      : [{ ...whoOf(person), entry: fact.first, on: plainDate(fact.on), flags, text: entryText(fact) }];
  });
}

/** On the list only what is severe: a scheme wants what is serious or unexpected, and a person decides that. */
function reportRowsOf(person: Person, which: 'severe ones' | 'every one'): AftercareView['reports'] {
  const written = factsOf(person.record, 'reaction-reported');
  return factsOf(person.record, 'reaction')
    .filter(({ body }) => which === 'every one' || body.severity === 'severe')
    .map((fact) => ({
      ...whoOf(person),
      reaction: fact.first,
      on: plainDate(fact.on),
      text: entryText(fact),
      reported: written
        .filter(({ body }) => body.reaction === fact.first || body.reaction === fact.id)
        .map((one) => `${entryText(one)}, ${shortDate(one.on)}`),
    }));
}
