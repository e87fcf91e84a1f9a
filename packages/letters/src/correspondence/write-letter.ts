/**
 * A letter from the facts of one person, and every reason why it may not be printed: no address, no day to answer by, words
 * that are too hard for a person to read. Nothing is filled in for what is missing.
 */
import type { LetterSheet } from '@twelvemonth/clinical';
import { readingLimits, sentencesIn, tooHardBecause, wordsIn } from '../reading-level.ts';
import { speakerOf } from '../speaker.ts';
import { type Body, type LetterSpeaker, paragraph } from './body.ts';
import { type LetterFacts, type LetterLanguage, letterSorts } from './facts.ts';
import { noAnswerToDoctor, requestToDentist, requestToDoctor, transfer } from './to-colleagues.ts';
import { bloodsNeeded, closing, invitation, noAnswer, putOff, reviewOutcome } from './to-patient.ts';
import { type LetterWords, letterWordsEnGB } from './words-en-gb.ts';
import { letterWordsEnUS } from './words-en-us.ts';

export const letterWords: Readonly<Record<LetterLanguage, LetterWords>> = {
  'en-GB': letterWordsEnGB,
  'en-US': letterWordsEnUS,
};

/** Every sentence knows whether it speaks of a drip or of an injection, and of which medicine. */
function letterSpeaker({
  language,
  treatment: { by, medicine },
}: Pick<LetterFacts, 'language' | 'treatment'>): LetterSpeaker {
  const speaker = speakerOf(letterWords[language], language);
  const treatment = speaker.say(by === 'drip' ? 'theDrip' : 'theInjection');
  return { ...speaker, say: (key, values = {}) => speaker.say(key, { treatment, medicine, ...values }) };
}

export type WrittenLetter = {
  readonly letter: LetterSheet;
  /** Empty: it may be printed. */
  readonly notPrintable: readonly string[];
};

export function writeLetter(facts: LetterFacts): WrittenLetter {
  const { language, matter, unit, person, today, signedBy } = facts;
  const { to } = letterSorts[matter.name];
  const speaker = letterSpeaker(facts);
  const { say, date } = speaker;
  const { title, blocks } = bodyOf(facts, speaker);
  const own = facts.ownWords === undefined ? [] : [paragraph(facts.ownWords)];
  const letter: LetterSheet = {
    language,
    version: say('version'),
    title,
    from: present(unit.name, unit.postalAddress, unit.telephone),
    to: to === 'patient' ? present(person.name, person.address) : present(facts.reader.name, facts.reader.address),
    dated: date(today),
    about: to === 'patient' ? '' : `${title}: ${say('about', person)}`,
    blocks: [paragraph(greetingOf(facts, speaker)), ...withOwnWords(blocks, own), ...questionTo(facts, speaker)],
    closing: [say('sincerely'), `${signedBy.name}, ${signedBy.role}`],
    foot: say('foot', { unit: unit.name, wording: say('version'), date: date(today) }),
    demo: facts.demo,
  };
  return { letter, notPrintable: [...missingIn(facts), ...tooHard(facts, speaker)] };
}

const present = (...lines: readonly (string | undefined)[]): string[] => lines.filter((line) => line !== undefined);

/** A reply form stays at the end. */
const withOwnWords = (blocks: Body['blocks'], own: Body['blocks']): Body['blocks'] => [
  ...blocks.filter(({ kind }) => kind !== 'reply'),
  ...own,
  ...blocks.filter(({ kind }) => kind === 'reply'),
];

function greetingOf({ matter, person }: LetterFacts, { say }: LetterSpeaker): string {
  const { to } = letterSorts[matter.name];
  if (to === 'patient') return say('dear', { name: person.name });
  return say(to === 'family doctor' ? 'dearDoctor' : 'dearColleague');
}

const questionTo = ({ matter, unit }: LetterFacts, { say }: LetterSpeaker): Body['blocks'] =>
  letterSorts[matter.name].to === 'patient' ? [paragraph(say('question', unit))] : [];

function bodyOf(facts: LetterFacts, speaker: LetterSpeaker): Body {
  const { matter } = facts;
  switch (matter.name) {
    case 'invitation':
      return invitation(matter, facts, speaker);
    case 'bloods needed':
      return bloodsNeeded(matter, facts, speaker);
    case 'put off':
      return putOff(matter, facts, speaker);
    case 'no answer':
      return noAnswer(matter, facts, speaker);
    case 'no answer, to the family doctor':
      return noAnswerToDoctor(matter, facts, speaker);
    case 'review outcome':
      return reviewOutcome(matter, facts, speaker);
    case 'transfer':
      return transfer(matter, facts, speaker);
    case 'closing':
      return closing(matter, facts, speaker);
    case 'request to the family doctor':
      return requestToDoctor(matter, facts, speaker);
    case 'request to the dentist':
      return requestToDentist(matter, facts, speaker);
  }
}

const readers = { 'family doctor': 'family doctor', dentist: 'dentist', 'other service': 'service' } as const;

function missingIn({ matter, person, reader, unit }: LetterFacts): readonly string[] {
  const { to } = letterSorts[matter.name];
  return present(
    to === 'patient' && person.address === undefined ? 'no address of the person is in the notes' : undefined,
    to !== 'patient' && reader.name === undefined ? `no ${readers[to]} is named in the notes` : undefined,
    to !== 'patient' && unit.postalAddress === undefined
      ? 'the unit has no postal address in its settings: a form cannot be sent back'
      : undefined,
  );
}

/** Names are what they are: of a unit or a treatment they say nothing about how hard our words are. */
function tooHard(facts: LetterFacts, speaker: LetterSpeaker): readonly string[] {
  const measured: LetterFacts = {
    ...facts,
    unit: { ...facts.unit, name: 'our unit' },
    ...(facts.matter.name === 'review outcome' && facts.matter.decided.outcome === 'other treatment'
      ? { matter: { ...facts.matter, decided: { ...facts.matter.decided, to: 'a pill' } } }
      : {}),
  };
  const { matter, ownWords } = facts;
  const prose = proseIn(bodyOf(measured, speaker).blocks).join('\n');
  // What somebody typed is measured by itself: among our easy words a hard sentence would not show.
  const typed = present(ownWords, matter.name === 'put off' ? matter.nextStep : undefined);
  if (letterSorts[matter.name].to === 'patient') {
    return [prose, ...typed].flatMap((text) => {
      const because = tooHardBecause(text);
      return because === undefined ? [] : [`too hard to read: ${because}`];
    });
  }
  const text = [prose, ...typed].join('\n');
  const long = sentencesIn(text).find((sentence) => wordsIn(sentence).length > readingLimits.wordsInASentence);
  return long === undefined ? [] : [`a sentence of ${wordsIn(long).length} words: "${long}"`];
}

/** What has to be read, one sentence a line; headings and tables would make a hard text look easy. */
export const proseIn = (blocks: Body['blocks']): readonly string[] =>
  blocks.flatMap((block): readonly string[] => {
    switch (block.kind) {
      case 'paragraph':
        return [block.text];
      case 'list':
        return block.items;
      case 'facts':
        return [];
      case 'reply':
        return [block.sendBackTo];
    }
  });
