/** All letters of a unit, from what the notes call for to what was answered; and those of one person. */
import { type LetterOut, lettersOut, noContactWanted, plainDate, shortDate } from '@twelvemonth/clinical';
import type { LetterRow, LettersOfPersonView, LettersView } from '@twelvemonth/exchange';
import {
  type LetterFacts,
  familyDoctorRequests,
  letterHtml,
  letterNames,
  letterSorts,
  lettersHtml,
} from '@twelvemonth/letters';
import type { AtHand } from '../at-hand.ts';
import { Refused } from '../problem.ts';
import type { Person } from '../register/people.ts';
import type { UnitNow } from '../register/units.ts';
import { bornInWords, fullName } from '../views/person-words.ts';
import { type CalledFor, lettersCalledFor } from './called-for.ts';
import { sheetOfEntry, writtenFor } from './written.ts';

/** How many letters that wait for nothing are shown. */
const sentShown = 100;

export function lettersViewOf(
  { accounts }: AtHand,
  everyone: readonly Person[],
  { unit, today }: UnitNow,
  reader: LetterFacts['signedBy'],
): LettersView {
  const here = everyone.filter(({ unitId }) => unitId === unit.id);
  const rows = here.flatMap((person) =>
    lettersOut(person.record).map((letter) => rowOf(person, letter, accounts.nameOf)),
  );
  const waiting = (what: LetterRow['waitsFor']): LetterRow[] =>
    rows.filter(({ waitsFor }) => waitsFor === what).toSorted((a, b) => (a.due < b.due ? -1 : a.due > b.due ? 1 : 0));
  const sent = waiting(undefined).toReversed();
  return {
    unit: unit.id,
    unitName: unit.name,
    today: plainDate(today),
    calledFor: here
      .flatMap((person) => lettersCalledFor(person).map((called) => calledForRowOf(person, called, reader)))
      .toSorted((a, b) => (a.since < b.since ? -1 : a.since > b.since ? 1 : 0)),
    toSign: waiting('signature'),
    toSend: waiting('sending'),
    toAnswer: waiting('answer'),
    sent: sent.slice(0, sentShown),
    more: Math.max(0, sent.length - sentShown),
  };
}

const ofPerson = (person: Person) => ({
  patient: person.patient,
  seq: person.record.lastSeq,
  name: fullName(person),
  number: person.identity?.number ?? '',
});

function calledForRowOf(person: Person, { name, because, since }: CalledFor, reader: LetterFacts['signedBy']) {
  const written = writtenFor(person, name, {}, reader);
  return {
    ...ofPerson(person),
    ...letterSorts[name],
    because,
    since: plainDate(since),
    notPrintable: 'because' in written ? [written.because] : [...written.notPrintable],
  };
}

function rowOf(person: Person, found: LetterOut, nameOf: (staff: string) => string): LetterRow {
  const { to, about, waitsFor, due } = found;
  const fact = found.letter ?? found.draft;
  if (fact === undefined) throw new Error('a letter with neither draft nor text');
  const stopped = stoppedBecause(person, found);
  return {
    ...ofPerson(person),
    to,
    about,
    entry: fact.first,
    on: plainDate(fact.on),
    by: nameOf(fact.author.staff),
    ...(waitsFor === undefined ? {} : { waitsFor }),
    due: plainDate(due),
    state: stateOf(found, nameOf),
    ...(stopped === undefined ? {} : { stopped }),
  };
}

function stoppedBecause({ standing, record, today }: Person, { to, waitsFor }: LetterOut): string | undefined {
  if (waitsFor === undefined) return undefined;
  if (standing.standing === 'died') return 'they have died';
  return to === 'patient' && waitsFor !== 'answer' && noContactWanted(record, today) !== undefined
    ? 'they said no to all contact'
    : undefined;
}

function stateOf({ draft, letter, sent, answer }: LetterOut, nameOf: (staff: string) => string): string {
  const parts = [
    draft === undefined ? undefined : `drafted by ${nameOf(draft.author.staff)} on ${shortDate(draft.on)}`,
    letter === undefined ? undefined : `signed by ${nameOf(letter.author.staff)} on ${shortDate(letter.on)}`,
    sent === undefined ? undefined : `sent by ${sent.body.by} on ${shortDate(sent.on)}`,
    answer === undefined ? undefined : `${answer.body.outcome} on ${shortDate(answer.on)}`,
  ];
  return parts.filter((part) => part !== undefined).join('; ');
}

export function lettersOfPersonViewOf(
  { accounts }: AtHand,
  person: Person,
  reader: LetterFacts['signedBy'],
): LettersOfPersonView {
  const called = new Set(lettersCalledFor(person).map(({ name }) => name));
  const rows = lettersOut(person.record).map((letter) => rowOf(person, letter, accounts.nameOf));
  return {
    patient: person.patient,
    name: fullName(person),
    born: bornInWords(person.identity?.born),
    number: person.identity?.number ?? '',
    today: plainDate(person.today),
    language: person.unit?.unit.letters?.language ?? 'en-GB',
    choices: letterNames.map((name) => {
      const written = writtenFor(person, name, { wanted: familyDoctorRequests.join(',') }, reader);
      return {
        ...letterSorts[name],
        ...('because' in written ? { because: written.because } : {}),
        calledFor: called.has(name),
      };
    }),
    letters: rows.toReversed(),
  };
}

export function letterDocumentOfEntry(person: Person, entry: string): string | Refused {
  const sheet = sheetOfEntry(person, entry);
  return sheet === undefined
    ? new Refused(404, 'not-here', 'There is no such letter, or it was kept as text only: it stands in the notes.')
    : letterHtml(sheet);
}

/** Every signed letter of a unit that waits to be sent, as one document: one print for the list. */
export function lettersToSendDocument(everyone: readonly Person[], { unit, today }: UnitNow): string | Refused {
  const sheets = everyone
    .filter(({ unitId }) => unitId === unit.id)
    .flatMap((person) =>
      lettersOut(person.record)
        .filter((found) => found.waitsFor === 'sending' && stoppedBecause(person, found) === undefined)
        .flatMap(({ letter }) => letter?.body.sheet ?? []),
    );
  return sheets.length === 0
    ? new Refused(409, 'nothing-to-print', 'No signed letter waits to be sent.')
    : lettersHtml(`Letters to send, ${unit.name}, ${shortDate(today)}`, sheets);
}
