/** Every letter of a person from draft to answer, and what each waits for. */
import { type Day, day } from '../calendar/day.ts';
import type { BodyOfKind } from '../kinds/index.ts';
import type { LetterReader, LetterSubject } from '../kinds/letter.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';

export type LetterOut = {
  readonly to: LetterReader;
  readonly about: LetterSubject;
  readonly draft: Fact<'letter-drafted'> | undefined;
  readonly letter: Fact<'letter'> | undefined;
  readonly sent: Fact<'letter-sent'> | undefined;
  /** The newest word about an answer. */
  readonly answer: Fact<'letter-answered'> | undefined;
  readonly waitsFor: 'signature' | 'sending' | 'answer' | undefined;
  /** Since when it waits; for an answer the day on which somebody asks for it. */
  readonly due: Day;
};

/** In the order in which they were begun. */
export function lettersOut(record: SubjectRecord): readonly LetterOut[] {
  const letters = factsOf(record, 'letter');
  const signed = new Set(letters.map(({ body }) => body.draft));
  const drafts = factsOf(record, 'letter-drafted');
  const waiting = drafts.filter(({ first }) => !signed.has(first)).map(drafted);
  return [...waiting, ...letters.map((letter) => letterOut(record, letter, drafts))].toSorted(
    (a, b) => begunAt(a) - begunAt(b),
  );
}

const begunAt = ({ draft, letter }: LetterOut): number => (draft ?? letter)?.seq ?? 0;

const drafted = (draft: Fact<'letter-drafted'>): LetterOut => ({
  to: draft.body.to,
  about: draft.body.about,
  draft,
  letter: undefined,
  sent: undefined,
  answer: undefined,
  waitsFor: 'signature',
  due: draft.on,
});

function letterOut(
  record: SubjectRecord,
  letter: Fact<'letter'>,
  drafts: readonly Fact<'letter-drafted'>[],
): LetterOut {
  const sent = factsOf(record, 'letter-sent').findLast(({ body }) => body.letter === letter.first);
  const answer = factsOf(record, 'letter-answered').findLast(({ body }) => body.letter === letter.first);
  const { to, about, sheet, draft } = letter.body;
  // A letter without a sheet went out as it was signed.
  const unsent = sheet !== undefined && sent === undefined;
  const chase = chaseOf(letter.body, answer?.body);
  return {
    to,
    about,
    draft: drafts.find(({ first }) => first === draft),
    letter,
    sent,
    answer,
    waitsFor: unsent ? 'sending' : chase === undefined ? undefined : 'answer',
    due: unsent ? letter.on : (chase ?? letter.on),
  };
}

/** When somebody asks for the answer; undefined: none is waited for. */
function chaseOf(
  { chaseOn }: BodyOfKind<'letter'>,
  answer: BodyOfKind<'letter-answered'> | undefined,
): Day | undefined {
  if (answer?.outcome === 'asked again') return day(answer.chaseOn);
  return answer !== undefined || chaseOn === undefined ? undefined : day(chaseOn);
}

/** The letter a visit owes: to the family doctor, about what was given or why not. */
export const isVisitLetter = ({ to, about }: BodyOfKind<'letter'>): boolean =>
  to === 'family doctor' && (about === 'dose given' || about === 'put off');
