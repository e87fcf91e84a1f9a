/** One letter for one person, as it would be signed now. */
import {
  type Day,
  type Fact,
  type LetterSheet,
  factWithId,
  injectionOf,
  latest,
  noContactWanted,
  plainDate,
  shortDate,
} from '@twelvemonth/clinical';
import type { LetterAsked, WrittenLetterView } from '@twelvemonth/exchange';
import {
  type LetterFacts,
  type LetterMatter,
  type LetterName,
  type WrittenLetter,
  letterNames,
  letterSorts,
  letterText,
  writeLetter,
} from '@twelvemonth/letters';
import { Refused } from '../problem.ts';
import type { Person } from '../register/people.ts';
import { bornInWords, fullName } from '../views/person-words.ts';
import { type MatterAsked, type NothingToWrite, matterOf } from './matter.ts';

const letterNamed = ({ to, about }: Pick<LetterAsked, 'to' | 'about'>): LetterName | undefined =>
  letterNames.find((name) => letterSorts[name].to === to && letterSorts[name].about === about);

type Asked = Omit<MatterAsked, 'language'> & { readonly language?: LetterFacts['language'] | undefined };
export type Written = WrittenLetter & { readonly matter: LetterMatter };

export function writtenFor(
  person: Person,
  name: LetterName,
  asked: Asked,
  signedBy: LetterFacts['signedBy'],
): Written | NothingToWrite {
  const { unit, identity, contact, today } = person;
  if (person.standing.standing === 'died') return { because: 'this person has died: nothing is written to them' };
  if (unit === undefined) return { because: 'their unit is not known' };
  const language = asked.language ?? unit.unit.letters?.language ?? 'en-GB';
  const matter = matterOf(person, name, { ...asked, language });
  if ('because' in matter) return matter;
  const written = writeLetter({
    language,
    today,
    demo: unit.unit.demo,
    treatment: treatmentOf(person),
    unit: {
      name: unit.unit.name,
      telephone: unit.unit.telephone,
      postalAddress: unit.unit.letters?.postalAddress,
    },
    person: {
      name: fullName(person),
      born: bornInWords(identity?.born, language),
      number: identity?.number ?? '',
      address: contact?.address,
    },
    reader: readerOf(person, name),
    signedBy,
    ownWords: name === 'put off' ? undefined : asked.words,
    matter,
  });
  const silent = letterSorts[name].to === 'patient' ? noContactWanted(person.record, today) : undefined;
  const notPrintable =
    silent === undefined
      ? written.notPrintable
      : [`they said no to all contact on ${shortDate(silent.on)}`, ...written.notPrintable];
  return { ...written, notPrintable, matter };
}

/** Without a prescription it is the medicine this service is for. */
function treatmentOf({ course }: Person): LetterFacts['treatment'] {
  const medicine = course.regimen?.medicine ?? 'zoledronic acid 5 mg';
  return { medicine, by: injectionOf(medicine) === undefined ? 'drip' : 'injection' };
}

function readerOf({ contact, record }: Person, name: LetterName): LetterFacts['reader'] {
  switch (letterSorts[name].to) {
    case 'family doctor':
      return { name: contact?.familyDoctor, address: contact?.familyDoctorAddress };
    case 'dentist':
      return { name: contact?.dentist, address: contact?.dentistAddress };
    case 'other service':
      return { name: latest(record, 'transfer-out')?.body.to, address: undefined };
    case 'patient':
      return { name: undefined, address: undefined };
  }
}

/** A transfer is chased by its own entry; the person is asked to ring, and the recall goes on. */
const chased: ReadonlySet<LetterName> = new Set([
  'no answer, to the family doctor',
  'request to the family doctor',
  'request to the dentist',
]);

const chaseOnOf = (matter: LetterMatter): Day | undefined =>
  chased.has(matter.name) && 'answerBy' in matter ? matter.answerBy : undefined;

export function writtenLetterViewOf(
  person: Person,
  asked: LetterAsked,
  signedBy: LetterFacts['signedBy'],
): WrittenLetterView | Refused {
  const name = letterNamed(asked);
  const written =
    name === undefined ? { because: 'there is no such letter' } : writtenFor(person, name, asked, signedBy);
  const draft = asked.draft === undefined ? undefined : sheetOfEntry(person, asked.draft);
  const sheet = draft === undefined ? ('because' in written ? undefined : written.letter) : resigned(draft, written);
  if (sheet === undefined)
    return new Refused(
      409,
      'nothing-to-write',
      `There is nothing to write: ${'because' in written ? written.because : 'the draft is gone'}.`,
    );
  const chaseOn = 'because' in written ? undefined : chaseOnOf(written.matter);
  return {
    to: asked.to,
    about: asked.about,
    patient: person.patient,
    seq: person.record.lastSeq,
    name: fullName(person),
    born: bornInWords(person.identity?.born),
    number: person.identity?.number ?? '',
    today: plainDate(person.today),
    sheet,
    text: letterText(sheet),
    notPrintable: 'because' in written ? [written.because] : [...written.notPrintable],
    ...(chaseOn === undefined ? {} : { chaseOn: plainDate(chaseOn) }),
  };
}

/** A draft keeps its words; the date, the address and the name under it are those of the day on which it is signed. */
const resigned = (draft: LetterSheet, written: Written | NothingToWrite): LetterSheet | undefined =>
  'because' in written
    ? undefined
    : { ...draft, dated: written.letter.dated, to: written.letter.to, closing: written.letter.closing };

/** The sheet of a draft or a signed letter, as it was kept. */
export function sheetOfEntry({ record }: Person, entry: string): LetterSheet | undefined {
  const found = factWithId(record, entry);
  if (found?.kind === 'letter-drafted') return (found as Fact<'letter-drafted'>).body.sheet;
  return found?.kind === 'letter' ? (found as Fact<'letter'>).body.sheet : undefined;
}
