/**
 * What the notes say about other notes that may be the same person's (kind `same-person`). The newest answer about each of
 * the others decides, by the order of writing: an answer takes back the one before it.
 */
import type { Day } from '../calendar/day.ts';
import { subjectId } from '../ledger/subject.ts';
import { type Fact, type SubjectRecord, factsOf } from './patient-record.ts';

export type SamePersonAnswer = Fact<'same-person'>;

/** The newest answer about each of the other notes, dated `upTo` or earlier. */
export function newestAnswers(record: SubjectRecord, upTo?: Day): readonly SamePersonAnswer[] {
  const newest = new Map<string, SamePersonAnswer>();
  for (const answer of factsOf(record, 'same-person')) {
    if (upTo !== undefined && answer.on > upTo) continue;
    const before = newest.get(answer.body.other);
    if (before === undefined || answer.seq > before.seq) newest.set(answer.body.other, answer);
  }
  return [...newest.values()];
}

/** Patients whose notes are read as part of these. */
export const readInThese = (record: SubjectRecord): readonly string[] =>
  newestAnswers(record).flatMap(({ body }) =>
    body.answer === 'one' && body.kept === subjectId(record.subject) ? [body.other] : [],
  );

/** The patient in whose notes these are read; undefined: they are read by themselves. */
export const readIn = (record: SubjectRecord): string | undefined =>
  newestAnswers(record)
    .map(({ body }) => (body.answer === 'one' && body.kept !== subjectId(record.subject) ? body.kept : undefined))
    .find((kept) => kept !== undefined);

/**
 * Answers that leave it open who this is: nobody has said that the two are two, and they are not read as one here either,
 * whether because nobody said so or because the other notes are not at hand.
 */
export const leftOpen = (record: SubjectRecord, upTo?: Day): readonly SamePersonAnswer[] =>
  newestAnswers(record, upTo).filter(
    ({ body }) =>
      body.answer !== 'two' &&
      !(body.answer === 'one' && (record.together ?? []).some(({ patient }) => patient === body.other)),
  );
