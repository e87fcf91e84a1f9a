/** A letter is signed once and sent once, answers belong to a letter, and nobody writes to a person who wants no contact. */
import { type LetterOut, lettersOut } from '../letters/letters-out.ts';
import { noContactWanted } from '../letters/no-contact.ts';
import type { Fact, SubjectRecord } from '../record/patient-record.ts';
import { type Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';
import type { Surroundings } from './surroundings.ts';

export function checkLetters(record: SubjectRecord, fact: Fact, now: Surroundings): readonly Refusal[] {
  const letters = lettersOut(record);
  switch (fact.kind) {
    case 'letter-drafted':
      return checkContactWanted(record, now, (fact as Fact<'letter-drafted'>).body.to);
    case 'letter': {
      const { to, draft } = (fact as Fact<'letter'>).body;
      return [...checkContactWanted(record, now, to), ...(draft === undefined ? [] : checkUnsigned(letters, draft))];
    }
    case 'letter-sent': {
      const found = letterNamed(letters, (fact as Fact<'letter-sent'>).body.letter);
      if (found === undefined) return [noSuchLetter];
      return found.waitsFor === 'sending'
        ? checkContactWanted(record, now, found.to)
        : [refusal('step-already-done', 'This letter has been sent already.', { remedy: 'nothing is sent twice' })];
    }
    case 'letter-answered':
      return letterNamed(letters, (fact as Fact<'letter-answered'>).body.letter) === undefined ? [noSuchLetter] : [];
    default:
      return [];
  }
}

const letterNamed = (letters: readonly LetterOut[], id: string): LetterOut | undefined =>
  letters.find(({ letter }) => letter?.first === id);

const noSuchLetter = refusal('no-such-entry', 'The letter it points at is not in these notes, or was withdrawn.', {
  field: 'line.body.letter',
});

function checkUnsigned(letters: readonly LetterOut[], id: string): readonly Refusal[] {
  const found = letters.find(({ draft }) => draft?.first === id);
  if (found === undefined)
    return [
      refusal('no-such-entry', 'The draft is not in these notes, or was withdrawn.', { field: 'line.body.draft' }),
    ];
  return found.waitsFor === 'signature'
    ? []
    : [refusal('step-already-done', 'This draft has been signed already.', { remedy: 'write another letter' })];
}

const checkContactWanted = (record: SubjectRecord, now: Surroundings, to: LetterOut['to']): readonly Refusal[] =>
  to === 'patient' && noContactWanted(record, now.today) !== undefined
    ? [
        refusal('no-contact-wanted', 'This person said no to all contact: nothing is sent to them.', {
          remedy: 'write to the family doctor; reopen care if they ask for it',
        }),
      ]
    : [];
